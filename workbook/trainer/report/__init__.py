"""What a class's marks say: facts, words and pictures of them, files, and the page that shows them."""
