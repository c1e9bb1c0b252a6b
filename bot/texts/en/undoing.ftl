help-undo = take back the last thing you did
undone = Taken back: { $what }.
undone-line = Taken back by { $name }: { $what }.
