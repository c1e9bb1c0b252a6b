"""A loopback stand-in for the chat platform: the room, its page, and the player of scripts."""
