using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Lines;

/// <summary>Decides where lines enter and whether they arrive.</summary>
internal static class LineDelivery
{
    private static readonly Func<RuleContext, Table> Known = static context => new Table(context.Lines.Count);

    /// <summary>First points of the runs at which a line enters: its pins, its source, or the inputs that serve it now; empty when it has none.</summary>
    public static ValueList<PointIndex> Entries(RuleContext context, LineNode line)
    {
        var demand = context.Demand(line);
        return demand.IsPinned ? demand.Allowed
            : demand.Existing.IsNone ? default
            : context.Shared(Known).Entries[line.Index] is { IsEmpty: false } known ? known
            : context.Shared(Known).Entries[line.Index] = [demand.Existing];
    }

    /// <summary>The sinks of a line, each once; those that do not resolve are left out. Not to be changed.</summary>
    public static LineSink[] Sinks(RuleContext context, LineNode line) => context.Shared(Known).Sinks[line.Index] ??= Stands(context, line);

    private static LineSink[] Stands(RuleContext context, LineNode line)
    {
        var sinks = new LineSink[line.Sinks.Count];
        var count = 0;
        var entries = Entries(context, line);
        for (var i = 0; i < line.Sinks.Count; i++)
        {
            var at = line.Sinks[i];
            if (!at.IsNone && !Holds(sinks.AsSpan(0, count), at))
            {
                sinks[count++] = Stand(context, line, entries, at, i);
            }
        }

        return count == sinks.Length ? sinks : sinks[..count];
    }

    private static bool Holds(ReadOnlySpan<LineSink> sinks, PointIndex at)
    {
        foreach (var sink in sinks)
        {
            if (sink.At == at)
            {
                return true;
            }
        }

        return false;
    }

    private static LineSink Stand(RuleContext context, LineNode line, ValueList<PointIndex> entries, PointIndex at, int entry)
    {
        foreach (var run in entries)
        {
            if (context.IsFedBy(at, run) && (line.Width == 1 || context.IsFedBy(at + 1, run + 1)))
            {
                return new LineSink
                {
                    Entry = entry,
                    At = at,
                    State = EntryState.Served,
                };
            }
        }

        if (line.Width == 1)
        {
            return new LineSink
            {
                Entry = entry,
                At = at,
                State = EntryState.Missing,
            };
        }

        var first = Entering(context, line, at);
        var second = Entering(context, line, at + 1);
        var state =
            first.IsNone && second.IsNone ? EntryState.Missing
            : first.IsNone || second.IsNone ? EntryState.Half
            : first == second + 1 ? EntryState.Swapped
            : second == first + 1 && FeedPlaces.AllowsRun(context.Demand(line), first) ? EntryState.Missing
            : EntryState.Split;
        return new LineSink
        {
            Entry = entry,
            At = at,
            State = state,
            First = first,
            Second = second,
        };
    }

    /// <summary>The input of those a line may use that feeds a point; none when none does.</summary>
    private static PointIndex Entering(RuleContext context, LineNode line, PointIndex point)
    {
        var demand = context.Demand(line);
        if (context.Origin(point).IsNone)
        {
            return PointIndex.None;
        }

        foreach (var passed in context.Upward(point))
        {
            if (demand.IsPinned ? IsOfPin(demand, passed) : FeedPlaces.Allows(demand, passed))
            {
                return passed;
            }
        }

        return PointIndex.None;
    }

    // The pins of a split line stand in the order written, so that a search by halves would miss some.
    private static bool IsOfPin(DemandNode demand, PointIndex point)
    {
        foreach (var run in demand.Allowed)
        {
            if (point == run || point == run + 1)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when every device and zone that a line's origin names is there, so that its inputs are known.</summary>
    public static bool IsResolved(RuleContext context, LineNode line)
    {
        var from = line.Model.From;
        var place = new Destination { Devices = from.Devices, Zones = from.Zones };
        return FeedPlaces.Resolves(context, place) && !FeedPlaces.HasUnknownDevice(context, place);
    }

    /// <summary>What is known of each line, by position in the document.</summary>
    private sealed class Table(int count)
    {
        public ValueList<PointIndex>[] Entries { get; } = new ValueList<PointIndex>[count];

        public LineSink[]?[] Sinks { get; } = new LineSink[]?[count];
    }
}
