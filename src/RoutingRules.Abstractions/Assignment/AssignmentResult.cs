using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Assignment;

/// <summary>What an assignment gave: a complete show and an account of every demand.</summary>
/// <remarks>Every demand is either in <see cref="Placements"/> or in <see cref="Unplaced"/>; a line with some sinks unreached is in both.</remarks>
public sealed record AssignmentResult
{
    /// <summary>The input with its patch completed.</summary>
    public required Show Show { get; init; }

    /// <summary>How far it got.</summary>
    public required AssignmentStatus Status { get; init; }

    /// <summary>How many of the 14 numbers, from the first on in the order asked for, are proven to be as small as can be; 14 when optimal.</summary>
    public required int ProvenNumbers { get; init; }

    /// <summary>How good it is; null when pins contradict.</summary>
    public required ObjectiveVector? Objective { get; init; }

    /// <summary>Where each placed demand is, in demand order.</summary>
    public required ValueList<Placement> Placements { get; init; }

    /// <summary>What could not be placed and why, in demand order.</summary>
    public required ValueList<UnplacedDemand> Unplaced { get; init; }

    /// <summary>Demands that were served elsewhere before, in demand order.</summary>
    public required ValueList<string> Moved { get; init; }

    /// <summary>Sets of pins that cannot hold together, each smallest and in demand order; empty unless pins contradict. All members are unplaced.</summary>
    public ValueList<ValueList<string>> Contradictions { get; init; }

    /// <summary>Streams of the input that the result no longer has, in document order.</summary>
    public ValueList<Id<AudioStream>> RemovedStreams { get; init; }

    /// <summary>Receive slots that took a stream of the input and take none now, in document order: also those of devices that no demand mentions.</summary>
    public ValueList<RemovedReceiver> RemovedReceivers { get; init; }

    /// <summary>Outputs that sounded in the input and are silent now, in point order.</summary>
    public ValueList<Point> Silenced { get; init; }

    /// <summary>Channels no line with a place names that carried a placed line's input and are cleared now, in point order.</summary>
    public ValueList<Point> Cleared { get; init; }

    /// <summary>What else a person should know, such as pins on dead points or holds that had to yield.</summary>
    public ValueList<string> Notes { get; init; }

    /// <summary>How full each device is in the result, in rig order.</summary>
    public ValueList<DeviceUse> Utilisation { get; init; }

    /// <summary>How full each direction of a link is that a stream passes, in rig order.</summary>
    public ValueList<LinkUse> Links { get; init; }

    /// <summary>What the rules say about the result.</summary>
    public required CheckResult Check { get; init; }
}
