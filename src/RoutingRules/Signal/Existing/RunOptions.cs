using RoutingRules.Resolving;

namespace RoutingRules.Signal.Existing;

/// <summary>The runs that serve a demand in the patch as it stands.</summary>
/// <param name="Demand">The demand.</param>
/// <param name="All">Every run, in the order ties are settled in.</param>
/// <param name="Usable">Those without a dead point and not behind a cable, in the same order.</param>
internal sealed record RunOptions(DemandNode Demand, List<PointIndex> All, List<PointIndex> Usable)
{
    /// <summary>The points the demand takes at a run: its own, and for a line that is split before the boxes those of every split end.</summary>
    public IEnumerable<int> Points(PointIndex run)
    {
        if (Demand.Line is null || Demand.Line.Model.From.At.IsEmpty)
        {
            return Points(run.Value);
        }

        return Demand.Allowed.SelectMany(end => Points(end.Value));
    }

    private IEnumerable<int> Points(int first) => Enumerable.Range(first, Demand.Width);
}
