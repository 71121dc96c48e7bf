using RoutingRules.Model;

namespace RoutingRules.Planning.Changeovers;

/// <summary>The steps of a changeover that are done at one place, for the person who stands there.</summary>
public sealed record ChangeoverCard
{
    /// <summary>The device; null for clocks and networks.</summary>
    public Id<Device>? Place { get; init; }

    /// <summary>What people call the place.</summary>
    public required string Title { get; init; }

    /// <summary>The zone it stands in, as people call it; null when the show does not say.</summary>
    public string? Zone { get; init; }

    /// <summary>What is done here, in the order of the plan: the same steps, folded.</summary>
    public ValueList<ChangeoverTask> Tasks { get; init; }

    /// <summary>The steps, in the order of the plan.</summary>
    public required ValueList<ChangeoverStep> Steps { get; init; }

    /// <summary>About how long the tasks of one timing take one person, in seconds.</summary>
    public int Seconds(ChangeoverTiming timing) => Tasks.Where(task => task.Timing == timing).Sum(task => task.Seconds);
}
