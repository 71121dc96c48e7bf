using RoutingRules.Model;

namespace RoutingRules.Answers.Changeovers;

/// <summary>Something that has to be done at the rig, before it has its place in the order.</summary>
internal sealed record PlannedMove
{
    public required ChangeoverPhase Phase { get; init; }

    public Id<Device>? Place { get; init; }

    public required string Text { get; init; }

    public ValueList<PointRange> Points { get; init; }

    public ValueList<string> Hazards { get; init; }

    public required int Seconds { get; init; }

    /// <summary>True for a plug that comes in and takes nobody's place.</summary>
    public bool IsNewPlug { get; init; }

    /// <summary>True for routes that are cleared.</summary>
    public bool IsClear { get; init; }

    /// <summary>What it changes.</summary>
    public Func<Show, Show> Apply { get; init; } = static show => show;

    /// <summary>Inputs and outputs where another plug goes in, although no source changes in the document.</summary>
    public ValueList<Point> Plugs { get; init; }
}
