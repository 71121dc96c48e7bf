using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Lines;

/// <summary>The lines that do not arrive everywhere, with causes, and runs of them that one cause explains.</summary>
internal static class LineFaults
{
    /// <summary>The lines with a sink at which nothing of them arrives, in document order; sinks that other rules explain are left out.</summary>
    public static List<LineFault> Collect(RuleContext context)
    {
        var faults = new List<LineFault>();
        CauseFinder? finder = null;
        Displacements? displaced = null;
        foreach (var line in context.Lines)
        {
            var demand = context.Demand(line);
            if (demand.Allowed.Count == 0 && (demand.IsPinned || !LineDelivery.IsResolved(context, line)))
            {
                continue;
            }

            var sinks = LineDelivery.Sinks(context, line);
            if (Array.TrueForAll(sinks, static sink => sink.State != EntryState.Missing))
            {
                continue;
            }

            var missing = new List<LineSink>();
            var arriving = new List<LineSink>();
            var causes = new List<MissingCause>();
            foreach (var sink in sinks)
            {
                if (sink.State != EntryState.Missing)
                {
                    arriving.Add(sink);
                }
                else if (
                    !(displaced ??= Displacements.OfLines(context)).IsMember(sink.At)
                    && Cause(context, finder ??= CauseFinder.Of(context), line, sink) is { } cause
                )
                {
                    missing.Add(sink);
                    if (!causes.Contains(cause))
                    {
                        causes.Add(cause);
                    }
                }
            }

            if (missing.Count > 0)
            {
                faults.Add(
                    new LineFault
                    {
                        Line = line,
                        Missing = missing,
                        Arriving = arriving,
                        Causes = causes,
                    }
                );
            }
        }

        return faults;
    }

    /// <summary>Runs of faults that one cause explains, each with its causes joined; the order does not depend on the order of the lines.</summary>
    public static List<(List<LineFault> Faults, List<MissingCause> Causes)> Runs(RuleContext context, List<LineFault> faults) =>
        FaultRuns.Of(
            faults,
            fault => fault.Causes,
            Compare,
            (first, causes, fault) =>
                fault.Causes.Count == 1
                && causes.Count == 1
                && (fault.Arriving.Count == 0) == (first.Arriving.Count == 0)
                && MissingCause.Join(context, causes[0], fault.Causes[0]) is { } joined
                    ? [joined]
                    : null
        );

    /// <summary>Why a half of a pair is missing at a sink; null when other rules explain it.</summary>
    public static MissingCause? Cause(CauseFinder finder, PointIndex point) => finder.IsMentioned(point) ? null : finder.AtSink(point);

    private static MissingCause? Cause(RuleContext context, CauseFinder finder, LineNode line, LineSink sink)
    {
        var demand = context.Demand(line);
        foreach (var entry in LineDelivery.Entries(context, line))
        {
            for (var position = 0; position < line.Width; position++)
            {
                if (finder.IsExplained(entry + position))
                {
                    return null;
                }
            }
        }

        if (demand.Allowed.Count == 0 && demand.EvenRuns.Count == 0)
        {
            return new MissingCause { Kind = CauseKind.Said, Text = NoInput(line) };
        }

        if (demand is { IsPinned: false, Existing.IsNone: true } && Shared(context, demand, sink.At) is { } shared)
        {
            return new MissingCause { Kind = CauseKind.Said, Text = shared };
        }

        var first = Cause(finder, sink.At);
        var second = line.Width == 1 || first is null ? null : Cause(finder, sink.At + 1);
        return first is null || line.Width == 1 ? first
            : second is null ? null
            : MissingCause.Join(context, first, second) ?? first;
    }

    /// <summary>Says that a sink carries an input the line may use but that counts for another line.</summary>
    private static string? Shared(RuleContext context, DemandNode demand, PointIndex sink)
    {
        foreach (var point in context.Upward(context.Origin(sink).IsNone ? PointIndex.None : sink))
        {
            if (FeedPlaces.AllowsRun(demand, point) && context.DemandAt(point) is { } other && other != demand)
            {
                return $"{context.Address(sink)} carries {context.Address(point)}, which counts for '{other.DisplayName}' already";
            }
        }

        return null;
    }

    private static string NoInput(LineNode line)
    {
        var place = FeedPlaces.Describe(new Destination { Devices = line.Model.From.Devices, Zones = line.Model.From.Zones });
        var inputs = line.Width == 1 ? "input" : "two inputs side by side";
        return $"{place} has no {inputs} for it{(line.Model.Phantom == PhantomNeed.Required ? " with phantom power" : "")}";
    }

    private static int Compare(LineFault x, LineFault y)
    {
        var order = (x.Arriving.Count == 0).CompareTo(y.Arriving.Count == 0);
        order = order != 0 ? order : FaultRuns.Compare(x.Causes, y.Causes);
        order = order != 0 ? order : x.Line.Model.Id.CompareTo(y.Line.Model.Id);
        return order != 0 ? order : x.Line.Index.CompareTo(y.Line.Index);
    }
}
