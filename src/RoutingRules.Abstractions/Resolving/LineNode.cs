using RoutingRules.Model;

namespace RoutingRules.Resolving;

/// <summary>A line with its sinks and its demand.</summary>
public sealed class LineNode
{
    /// <summary>The line as written.</summary>
    public required Line Model { get; init; }

    /// <summary>Position in the document, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>First points of its <c>to</c> entries, in order; none for one that does not resolve.</summary>
    public required ValueList<PointIndex> Sinks { get; init; }

    /// <summary>First point of its <c>from.source</c>; none when it has none or it does not resolve.</summary>
    public required PointIndex Source { get; init; }

    /// <summary>Position of its demand in <see cref="ResolvedShow.Demands"/>.</summary>
    public required int Demand { get; init; }

    /// <summary>The name, or else the id.</summary>
    public string DisplayName => Model.Name ?? Model.Id.Value;

    /// <summary>True when an earlier entry of its <c>to</c> says the same; such an entry counts for nothing.</summary>
    internal bool IsRepeated(int sink)
    {
        for (var earlier = 0; earlier < sink; earlier++)
        {
            if (Model.To[earlier] == Model.To[sink])
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>How many points wide: 1, or 2 for a pair.</summary>
    public int Width => Model.Width;
}
