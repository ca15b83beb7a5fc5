# label
