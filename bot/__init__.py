"""Tureen: the bot in the group's chat. All effects live here; the arithmetic is in `planning`."""
