"""The commands of Django that the shop adds."""
