using RoutingRules.Model;

namespace RoutingRules.Planning.Changeovers;

/// <summary>What one person does at one place in one go: a step, or several that belong to one load or one clearing of the stage.</summary>
public sealed record ChangeoverTask
{
    /// <summary>Its number in the plan, from 1; tasks stand in the order of their first steps.</summary>
    public required int Number { get; init; }

    /// <summary>The device at which it is done; null for clocks and networks, which are everywhere.</summary>
    public Id<Device>? Place { get; init; }

    /// <summary>When it can be done.</summary>
    public required ChangeoverTiming Timing { get; init; }

    /// <summary>True for what is loaded into a device, by a recall, from a file or by hand.</summary>
    public bool IsLoad { get; init; }

    /// <summary>What to do, as an order to a person; that of the step where there is one only.</summary>
    public required string Text { get; init; }

    /// <summary>The steps it is made of, at least one, in the order of the plan.</summary>
    public required ValueList<ChangeoverStep> Steps { get; init; }

    /// <summary>About how long it takes one person, in seconds. A load takes its time once, however many steps it is.</summary>
    public required int Seconds { get; init; }
}
