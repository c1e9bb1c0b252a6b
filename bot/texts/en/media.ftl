# What is no text.

media-heard = I can't listen to it. Please write it, like “3 of us, bringing slaw for 12”.
media-seen = I can't see what is in it. Please write what it is, like “slaw for 12”.
media-other = I can't read that. Please write it.
