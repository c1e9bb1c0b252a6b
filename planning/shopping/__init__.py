"""What nobody brings, in packages and money; and who pays whom at the end."""

from planning.shopping.evening import Transfer, evening_out, settled, shares
from planning.shopping.listing import ShoppingRow, shopping
from planning.shopping.prices import cost_of, own_price

__all__ = ["ShoppingRow", "Transfer", "cost_of", "evening_out", "own_price", "settled", "shares", "shopping"]
