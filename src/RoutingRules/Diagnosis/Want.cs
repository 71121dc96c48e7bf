using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis;

/// <summary>What an entry of a feed, or a line at one of its sinks, wants: one of some sources at one of some places.</summary>
internal sealed class Want
{
    public required DemandNode Demand { get; init; }

    /// <summary>First points of the runs at which it may arrive.</summary>
    public required ValueList<PointIndex> Places { get; init; }

    /// <summary>First points of the runs of which one shall arrive.</summary>
    public required ValueList<PointIndex> Sources { get; init; }

    /// <summary>First points of the runs from which it may come just as well once what comes from there now comes from elsewhere.</summary>
    public ValueList<PointIndex> Others { get; init; }

    /// <summary>True when only labels or settings say so: the show leaves the place open. Such a want is met where one can, and may be given up.</summary>
    public bool IsLikely { get; init; }

    public int Width => Demand.Width;

    /// <summary>The run at which it arrives as the show stands; none when it does not.</summary>
    public PointIndex MetAt { get; init; }

    public bool IsMet => !MetAt.IsNone;

    /// <summary>True when it still arrives with some points fed otherwise, wherever it comes from then.</summary>
    public bool IsKept(Overlay overlay) => !Meet(overlay, Places, Sources, Width).IsNone || !Meet(overlay, Places, Others, Width).IsNone;

    /// <summary>The run at which it arrives with some points fed otherwise; none when it does not.</summary>
    public static PointIndex Meet(Overlay overlay, ValueList<PointIndex> places, ValueList<PointIndex> sources, int width)
    {
        foreach (var place in places)
        {
            foreach (var source in sources)
            {
                var passes = true;
                for (var position = 0; passes && position < width; position++)
                {
                    passes = overlay.Passes(place + position, source + position);
                }

                if (passes)
                {
                    return place;
                }
            }
        }

        return PointIndex.None;
    }
}
