"""One file = one thing a chat can do. Each ends in `register(app)`; nothing else lists them."""
