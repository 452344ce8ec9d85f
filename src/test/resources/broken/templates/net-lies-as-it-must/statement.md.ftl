A cube is folded from a net.
