"""The arithmetic of feeding a crowd: values in, values out.

Nothing here touches the network, a database, a file (but `tables.py`), the clock or chance.
"""
