"""Benchmarks: `python -m tests.bench` prints a table. Figures are only comparable within one run."""
