using RoutingRules.Assignment.Wiring;

namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>A counter of sources that fill blocks freely: each full block begins a new one.</summary>
/// <param name="Level">The level on which its blocks count.</param>
/// <param name="Width">Sources to a block.</param>
/// <param name="Device">Position of the device among those of the search; -1 when it belongs to none.</param>
internal readonly record struct OrderPool(ObjectiveLevel Level, int Width, int Device)
{
    /// <summary>The cost of the blocks begun when sources are added.</summary>
    public int Cost(int before, int amount) =>
        (((before + amount + Width - 1) / Width) - ((before + Width - 1) / Width)) * (Level == ObjectiveLevel.TransmitBlocks ? WiringFloor.WholeBlock : 1);
}
