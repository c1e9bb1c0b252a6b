# What the courier says itself. Facts are named in each text.

courier-pin-refused = I could not pin the board. Whoever looks after this group may pin it by hand, or let me pin messages.

# Why something was not delivered, for the host.
courier-why-blocked = they have not opened a private chat with me, or have closed it
courier-why-gone = I am not in that group any more
courier-why-no-right = I am not allowed to write there
courier-why-lost = the message it was about is gone
courier-why-refused = it could not be sent like this
courier-why-doubt = the line broke while it was being sent, so it may or may not have arrived
courier-why-late = its moment had passed before it could be sent
courier-why-line = the line to the platform stayed broken
