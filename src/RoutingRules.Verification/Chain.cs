using RoutingRules.Model;

namespace RoutingRules.Verification;

/// <summary>The way from a point up to where its signal comes from.</summary>
internal sealed class Chain
{
    /// <summary>The point itself first, then each point upstream.</summary>
    public required IReadOnlyList<Point> Points { get; init; }

    /// <summary>Step i leads from point i to point i + 1.</summary>
    public required IReadOnlyList<TraceStep> Steps { get; init; }

    /// <summary>The real source at the end; null for silence.</summary>
    public required Point? Source { get; init; }

    /// <summary>How many steps up a point lies; -1 when the signal does not pass it.</summary>
    public int IndexOf(Point point)
    {
        for (var i = 0; i < Points.Count; i++)
        {
            if (Points[i] == point)
                return i;
        }

        return -1;
    }

    /// <summary>True when no route of the patch, stream or cable is on the way: factory and fixed routes inside one device.</summary>
    public bool IsBuiltIn => Steps.All(step => step.Kind is StepKind.Factory or StepKind.Fixed or StepKind.Through);
}
