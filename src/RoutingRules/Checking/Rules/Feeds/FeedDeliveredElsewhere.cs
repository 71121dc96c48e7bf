using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Checking.Facts.Hearing;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports feeds that are missing where they belong and sound at outputs where no feed wants them.</summary>
/// <remarks>One finding for each run of neighbouring wrong outputs; entities are the feeds, then the runs of outputs.</remarks>
public sealed class FeedDeliveredElsewhere : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3002",
            Name = "feed-delivered-elsewhere",
            Title = "Feed sounds at a place that does not want it",
            Family = RuleFamily.Feeds,
            Severity = Severity.Warning,
            Checks = "A feed that is missing somewhere does not sound at an output that no feed from the same bus may use.",
            Why = "A mix on the wrong connector is heard by the wrong people: a lead vocal's ears on a wedge, or a wedge mix in the house.",
            Remedy = "Mute the wrong output, then move the patch to the place the feed names, or correct the feed.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        context.LookedAt(FeedFaults.Judged(context, 1));
        var faults = FeedFaults.Collect(context);
        if (faults.Count == 0)
        {
            return;
        }

        var intended = Intended(context);
        var strays = new List<FeedFault>();
        foreach (var fault in faults)
        {
            var outputs = new List<MissingCause>();
            for (var position = 0; position < fault.Feed.Width; position++)
            {
                AddStrays(context, fault.Feed.Source + position, intended, outputs);
            }

            if (outputs.Count > 0)
            {
                strays.Add(
                    new FeedFault
                    {
                        Feed = fault.Feed,
                        Missing = fault.Missing,
                        Arriving = fault.Arriving,
                        Causes = outputs,
                    }
                );
            }
        }

        foreach (var (run, causes) in FeedFaults.Runs(context, strays))
        {
            var places = causes.ConvertAll(cause => context.Address(cause.First, cause.Width).ToString());
            var message =
                run.Count == 1
                    ? $"Feed '{run[0].Feed.DisplayName}' is missing at {run[0].Places("and")} and sounds at {Wording.List(places)}, where no feed wants it."
                    : string.Create(
                        CultureInfo.InvariantCulture,
                        $"{run.Count} feeds sound at {Wording.List(places)}, where no feed wants them. Missing: {Names(run)}."
                    );
            var entities = FeedFaults.Entities(run);
            entities.AddRange(places.ConvertAll(place => Entity.Of("output", place)));
            context.Report(message, run[0].Pointer, [.. entities]);
        }
    }

    /// <summary>The demands of each source point.</summary>
    private static Dictionary<PointIndex, List<DemandNode>> Intended(RuleContext context)
    {
        var intended = new Dictionary<PointIndex, List<DemandNode>>();
        foreach (var demand in context.Demands)
        {
            for (var position = 0; demand.Feed is { Source.IsNone: false } feed && position < demand.Width; position++)
            {
                if (!intended.TryGetValue(feed.Source + position, out var demands))
                {
                    intended.Add(feed.Source + position, demands = []);
                }

                demands.Add(demand);
            }
        }

        return intended;
    }

    /// <summary>Adds the outputs that carry a source by a stream or a route of the patch, as single points or joined runs.</summary>
    private static void AddStrays(RuleContext context, PointIndex source, Dictionary<PointIndex, List<DemandNode>> intended, List<MissingCause> outputs)
    {
        var wanted = new List<PointIndex>();
        var strays = new List<PointIndex>();
        var demands = intended[source];
        foreach (var point in FeedPlaces.Reached(context, source))
        {
            if (demands.Exists(demand => FeedPlaces.Allows(demand, point)))
            {
                wanted.Add(point);
            }
            else if (
                context.GroupOf(point).Kind == PortKind.Output
                && IsPatched(context, point, source)
                && !EarFeeds.Of(context).IsOnUnaskedWay(point)
                && !PrivateSounds.Of(context).IsOnWay(point)
            )
            {
                strays.Add(point);
            }
        }

        strays.RemoveAll(stray => wanted.Exists(point => context.IsFedBy(point, stray) || context.IsFedBy(stray, point)));
        strays.RemoveAll(stray => strays.Exists(other => other != stray && context.IsFedBy(stray, other)));
        foreach (var stray in strays)
        {
            var found = new MissingCause { Kind = CauseKind.OtherPlace, First = stray };
            if (outputs.Count > 0 && MissingCause.Join(context, outputs[^1], found) is { } joined)
            {
                outputs[^1] = joined;
            }
            else
            {
                outputs.Add(found);
            }
        }
    }

    private static bool IsPatched(RuleContext context, PointIndex point, PointIndex source)
    {
        foreach (var passed in context.Upward(point))
        {
            if (passed == source)
            {
                break;
            }

            if (context.Via(passed) is HopKind.Route or HopKind.Stream)
            {
                return true;
            }
        }

        return false;
    }

    private static string Names(List<FeedFault> run) => Wording.List(run.ConvertAll(fault => $"'{fault.Feed.DisplayName}' at {fault.Places("and")}"));
}
