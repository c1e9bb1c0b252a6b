help-undo = deshacer lo último que hiciste
undone = Deshecho.
undone-line = Deshecho por { $name }.
