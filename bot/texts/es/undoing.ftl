help-undo = deshacer lo último que hiciste
undone = Deshecho: { $what }.
undone-line = Deshecho por { $name }: { $what }.
