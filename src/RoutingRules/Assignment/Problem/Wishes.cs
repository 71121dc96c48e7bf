using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Problem;

/// <summary>What the options say about single demands: which to leave out, and which places each must not take.</summary>
internal sealed class Wishes
{
    private readonly HashSet<string> leftOut;
    private readonly HashSet<(string Demand, int First)> avoided = [];

    /// <exception cref="ArgumentException">A demand or point does not exist.</exception>
    public Wishes(ResolvedShow show, AssignmentOptions options)
    {
        leftOut = new HashSet<string>(options.LeaveOut, StringComparer.Ordinal);
        foreach (var place in options.Avoid)
        {
            if (show.Graph.Find(place.At, out var first) != ConnectionState.Connected)
            {
                throw new ArgumentException($"'{place.At}' is no point of the rig; name one such as box/out/3.");
            }

            avoided.Add((place.Demand, first.Value));
        }

        if (leftOut.Count + avoided.Count == 0)
        {
            return;
        }

        var known = show.Demands.Select(demand => demand.Key).ToHashSet(StringComparer.Ordinal);
        if (options.LeaveOut.Concat(options.Avoid.Select(place => place.Demand)).FirstOrDefault(name => !known.Contains(name)) is { } unknown)
        {
            throw new ArgumentException(
                $"The show has no demand '{unknown}'; name a line's id, or a feed's id with the number of its entry, such as main-l/1."
            );
        }
    }

    public bool IsLeftOut(DemandNode demand) => leftOut.Contains(demand.Key);

    public bool IsAvoided(DemandNode demand, PointIndex first) => avoided.Count > 0 && avoided.Contains((demand.Key, first.Value));
}
