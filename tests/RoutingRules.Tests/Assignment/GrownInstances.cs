namespace RoutingRules.Tests.Assignment;

/// <summary>
/// Tiny shows with what stands around a stage as well: processors, looms that split, a second network, a multicore, a player, boxes routed in blocks.
/// </summary>
/// <remarks>
/// Each is a tiny show of <see cref="TinyInstances"/> to which some of these are added: processors behind outputs (with processing, fixed, factory or
/// hand-made routes), several cables at an output, a second network that the same devices share, a digital multicore, a player whose transmit slots are
/// fixed, a box that routes in blocks, blocks of one, more dead and reserved points, and a patch of which parts are missing. Too large for brute force.
/// </remarks>
public static class GrownInstances
{
    /// <summary>The instance of a seed.</summary>
    public static TinyInstance Make(int seed)
    {
        var tiny = TinyInstances.Make(seed);
        var grown = new GrownShow(new TinyDice(~seed), tiny.Show);
        return tiny with { Show = grown.Show with { Title = $"Grown {seed}" }, Options = tiny.Options };
    }
}
