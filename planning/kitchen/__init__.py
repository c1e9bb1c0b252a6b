"""The kitchen timeline: `timeline(potluck, now)`."""
