"""Quality: does the steel agree with the drawing, on receipt, when it is done, and when it goes up?"""
