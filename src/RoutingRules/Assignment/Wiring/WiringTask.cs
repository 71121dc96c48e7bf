using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>One decision of a wiring: what a receive block under fixed outputs takes, or how a freely routed sink gets its source.</summary>
internal sealed class WiringTask
{
    /// <summary>The receive block whose contents are prescribed; null for a free need.</summary>
    public ReceiveBlock? Block { get; init; }

    /// <summary>Sources by position in the block; -1 where nothing is prescribed.</summary>
    public int[] Wanted { get; init; } = [];

    /// <summary>Positions that belong to demands that stay where they were.</summary>
    public bool[] Kept { get; init; } = [];

    /// <summary>Blocks that must take the same stream, because a pair spans them.</summary>
    public List<WiringTask> SameStream { get; } = [];

    /// <summary>Sources of a free need, 1 or 2.</summary>
    public int[] Sources { get; init; } = [];

    /// <summary>First sinks of a free need; several when sinks of one device share it.</summary>
    public List<int> Sinks { get; } = [];

    /// <summary>Port groups whose receive blocks may serve a free need.</summary>
    public int[] PortGroups { get; init; } = [];

    /// <summary>True for a free need of a demand that stays where it was.</summary>
    public bool IsKept => Staying.Count > 0;

    /// <summary>The sinks of demands that stay, each with what feeds its points in the input: the same for all of one need.</summary>
    public List<(int Sink, int[] Feeders)> Staying { get; } = [];

    /// <summary>What feeds the sinks that stay in the input, by position; empty while none stays.</summary>
    public int[] Feeders => Staying.Count > 0 ? Staying[0].Feeders : [];

    public required int Sender { get; init; }

    public required int Receiver { get; init; }

    /// <summary>For a free need that is served: the receive slots, by source.</summary>
    public int[] Served { get; set; } = [];

    /// <summary>The same free need for one of its sinks.</summary>
    public WiringTask For(int sink)
    {
        var task = new WiringTask
        {
            Sources = Sources,
            PortGroups = PortGroups,
            Sender = Sender,
            Receiver = Receiver,
        };
        task.Sinks.Add(sink);
        task.Staying.AddRange(Staying.Where(staying => staying.Sink == sink));
        return task;
    }
}
