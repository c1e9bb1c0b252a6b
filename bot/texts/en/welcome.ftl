welcome-group =
    Hello! I keep a potluck together: who comes, who brings what, how much of it, and when.
    Start with “/potluck Sat 18 Sep 5pm, about 24 people”, or just /potluck.
welcome-back = I am back. What you told me is kept, and the board stands below.
welcome-admin = Thank you: as an administrator I can pin the board and read answers in your own words everywhere in this group.
welcome-no-admin = I am no longer an administrator: I see commands, buttons and replies to my messages, which is enough.
left-host = { $name } left the group; { $host } is the host now.
left-host-nobody = { $name } left the group and nobody else is coming yet; any administrator may take over.
left-dishes = { $name } left the group; these are free again: { $dishes }.
