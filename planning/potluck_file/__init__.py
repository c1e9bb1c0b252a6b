"""The potluck as a JSON object: what `plan` reads and `export` writes.

`read(document)` gives (potluck, now, warnings) or raises `Faults`; `write(potluck, now)` gives the
object back. Both are pure: reading bytes and parsing JSON happen outside.
"""

from planning.potluck_file.fields import Faults
from planning.potluck_file.reading import read
from planning.potluck_file.writing import write

__all__ = ["Faults", "read", "write"]
