"""What rules ask about a book, worked out once."""
