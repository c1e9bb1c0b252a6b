help-undo = take back the last thing you did
undone = Taken back.
undone-line = Taken back by { $name }.
