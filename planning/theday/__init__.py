"""The day itself: what runs now and next, what goes wrong and what it changes, the table, what is left."""
