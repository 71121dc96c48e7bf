using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment;

/// <summary>Routing in blocks at every offset that the definition allows: a block of sinks takes a whole block of sources in order.</summary>
internal static class BruteForceBlocks
{
    /// <summary>The entry that routes a sink from a source as part of a block; null when there is none.</summary>
    public static RoutingEntry? Entry(RigFacts rig, Point from, Point to) =>
        rig.Group(to)?.FixedFrom is not null
            ? null
            : rig.Device(to.Device)
                ?.Profile?.Routing.FirstOrDefault(entry =>
                    entry.Mode == RoutingMode.Block
                    && entry.From == from.Group
                    && entry.To == to.Group
                    && (from.Number - 1) % (entry.BlockSize ?? 1) == (to.Number - 1) % (entry.BlockSize ?? 1)
                );

    /// <summary>A route with all others of its block; a sink beyond the last source takes nothing.</summary>
    public static IEnumerable<(Point? From, Point To)> Together(RigFacts rig, Point source, Point sink)
    {
        var size = Entry(rig, source, sink)?.BlockSize ?? 1;
        var start = sink.Number - ((sink.Number - 1) % size);
        for (var number = start; number < start + size && number <= rig.Group(sink)!.Count; number++)
        {
            var taken = number - sink.Number + source.Number;
            yield return (taken <= rig.Group(source)!.Count ? rig.Group(source)!.At(taken) : null, rig.Group(sink)!.At(number));
        }
    }
}
