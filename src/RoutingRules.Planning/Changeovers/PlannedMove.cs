using RoutingRules.Model;

namespace RoutingRules.Planning.Changeovers;

/// <summary>Something that has to be done at the rig, before it has its place in the order.</summary>
internal sealed record PlannedMove
{
    public required ChangeoverPhase Phase { get; init; }

    public Id<Device>? Place { get; init; }

    public required string Text { get; init; }

    /// <summary>What belongs to it, such as each label to write.</summary>
    public ValueList<string> Details { get; init; }

    public ValueList<PointRange> Points { get; init; }

    public ValueList<string> Hazards { get; init; }

    public required int Seconds { get; init; }

    /// <summary>True for a plug that comes in and takes nobody's place.</summary>
    public bool IsNewPlug { get; init; }

    /// <summary>True for a plug that goes for good, or that makes way for a cable.</summary>
    public bool IsPull { get; init; }

    /// <summary>True for what is loaded into a device: routes, streams, gain owners and labels.</summary>
    public bool IsLoad { get; init; }

    /// <summary>True for routes that are cleared.</summary>
    public bool IsClear { get; init; }

    /// <summary>What it changes.</summary>
    public Func<Show, Show> Apply { get; init; } = static show => show;

    /// <summary>True for what must find phantom power off where it is plugged: a line that needs it or must not get it, and a cable.</summary>
    public bool NeedsPhantomOff { get; init; }

    /// <summary>False for work on the stage that leaves nothing plugged to read back.</summary>
    public bool IsReadBack { get; init; } = true;

    /// <summary>What to mind when what it touches is opened; null for nothing.</summary>
    public string? OnOpening { get; init; }

    /// <summary>
    /// Inputs and outputs where another plug goes in or phantom power changes, although no source changes in the document; of an analogue split all legs.
    /// </summary>
    public ValueList<Point> Plugs { get; init; }
}
