using RoutingRules.Profiles;

namespace RoutingRules.Tests.Assignment;

/// <summary>Tiny shows of the kinds that <see cref="TinyInstances"/> meets too seldom, the same one for the same kind and seed.</summary>
/// <remarks>One console, one or two boxes, up to four feeds; trying everything takes well under a second.</remarks>
public static class PointedInstances
{
    /// <summary>Freely routed boxes with pins at low numbers, so that the first free number may oppose the order of the list.</summary>
    public static TinyInstance FreePins(int seed)
    {
        var show = new PointedShow(seed, 1, RoutingMode.Free, RoutingMode.Free);
        show.AddFeeds(2, 3, pairs: 10, pins: 40);
        show.AddPatch(25);
        return show.Make();
    }

    /// <summary>Pairs that are served already, over slots that carry the same signals twice.</summary>
    public static TinyInstance KeptPairs(int seed)
    {
        var show = new PointedShow(seed, 2, RoutingMode.Free, RoutingMode.Free);
        show.AddFeeds(1, 2, pairs: 80, pins: 10);
        show.AddPatch(100);
        return show.Make();
    }

    /// <summary>Routing in blocks at the box, at the console or both, with room for other offsets than none.</summary>
    public static TinyInstance Blocks(int seed)
    {
        var where = new TinyDice(seed).From(0, 2);
        var show = new PointedShow(seed, 3, where == 0 ? RoutingMode.Free : RoutingMode.Block, where == 1 ? RoutingMode.Free : RoutingMode.Block);
        show.AddFeeds(1, 3, pairs: 15, pins: 30);
        show.AddPatch(50);
        return show.Make();
    }

    /// <summary>More pins than a few blocks and streams can serve.</summary>
    public static TinyInstance Contradictions(int seed)
    {
        var where = new TinyDice(seed).From(0, 2);
        var show = new PointedShow(seed, 4, where == 0 ? RoutingMode.Free : RoutingMode.Fixed, RoutingMode.Free);
        show.AddFeeds(2, 4, pairs: 15, pins: 85);
        show.AddPatch(20);
        return show.Make();
    }
}
