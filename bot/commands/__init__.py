"""The commands of `python -m bot`, one file each: `main(args) -> int` gives the exit code."""
