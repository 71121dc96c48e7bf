using RoutingRules.Model;

namespace RoutingRules.Planning.Changeovers;

/// <summary>One step of a changeover.</summary>
public sealed record ChangeoverStep
{
    /// <summary>Its number in the plan, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>The part of the changeover it belongs to.</summary>
    public required ChangeoverPhase Phase { get; init; }

    /// <summary>When it can be done.</summary>
    public required ChangeoverTiming Timing { get; init; }

    /// <summary>The device at which it is done; null for clocks and networks, which are everywhere.</summary>
    public Id<Device>? Place { get; init; }

    /// <summary>What to do, as an order to a person.</summary>
    public required string Text { get; init; }

    /// <summary>What belongs to it, such as each label to write; empty where the text says it all.</summary>
    public ValueList<string> Details { get; init; }

    /// <summary>The points it is about, in point order; for muting and opening exactly those that are muted or opened.</summary>
    public ValueList<PointRange> Points { get; init; }

    /// <summary>What to mind, one sentence each; empty when there is nothing beside the usual cautions.</summary>
    public ValueList<string> Hazards { get; init; }

    /// <summary>About how long it takes one person, in seconds.</summary>
    public required int Seconds { get; init; }
}
