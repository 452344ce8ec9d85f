package ampersheet.chain;

/** Tiles put together, looked at for what joins them rather than for their pixels. */
public sealed interface Assembly permits MatingEdge, BranchedTiles, TileRow, PrismNet {}
