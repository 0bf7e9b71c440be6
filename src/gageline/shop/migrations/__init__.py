"""How the tables of the shop came to be."""
