using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Documents;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Points;

/// <summary>Reports outputs that are used but carry nothing. Of several outputs one behind the other only the first is named.</summary>
/// <remarks>Outputs that are cabled and otherwise untouched give one note for each device; outputs set to nothing on purpose give none,
/// and so do outputs where a feed that is pinned there, or half of it, is missing, which the rules about feeds report, outputs that only a pinned feed uses
/// whose source
/// does not exist, which the rules about the document report, and cables in dead outputs, which have their own rule.</remarks>
public sealed class OutputOrphaned : Rule<ResolvedShow>
{
    private const int Pinned = 0;
    private const int Routed = 1;
    private const int Cabled = 2;
    private const int Idle = 3;

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR2003",
            Name = "output-orphaned",
            Title = "Used output without signal",
            Family = RuleFamily.Points,
            Severity = Severity.Error,
            Severities = [Severity.Error, Severity.Warning, Severity.Note],
            Checks = "Every output that a feed is pinned to, a route leads to, or a cable leads on from traces back to a real source.",
            Why = "A loudspeaker, pack or recorder hangs on it and will stay silent.",
            Remedy = "Follow the path back to the point named and patch a source to it, or take the route, cable or feed out.",
            Source = "AMWA IS-08 v1.0.1, Behaviour, The Active Map (an unrouted output channel is silent)",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var silence = Silence.Of(context);
        var claims = new Dictionary<int, (int Tag, int Order)>();
        ClaimRouted(context, silence, claims);
        ClaimCabled(context, silence, claims);
        var sourceless = ClaimPinned(context, silence, claims);
        if (claims.Values.Any(claim => claim.Tag != Idle))
        {
            RemoveTold(context, claims);
        }

        if (claims.Count == 0)
        {
            return;
        }

        // The runs put the outputs in order, whatever order the table gives.
        var runs = new SinkRuns();
        foreach (var (output, claim) in claims)
        {
            runs.Add(new PointIndex(output), PointIndex.None, claim.Tag, claim.Order);
        }

        var merged = runs.Merge(context);
        foreach (var run in merged)
        {
            if (run.Tag != Idle)
            {
                Report(context, silence, claims, run);
            }
        }

        ReportIdle(context, merged, sourceless);
    }

    private static void ClaimRouted(RuleContext context, Silence silence, Dictionary<int, (int Tag, int Order)> claims)
    {
        foreach (var route in context.Routes)
        {
            if (route.From.IsNone || context.GroupOf(route.To).Kind != PortKind.Output)
            {
                continue;
            }

            context.LookedAt(route.Model.To.Width);
            for (var position = 0; position < route.Model.To.Width; position++)
            {
                if (context.Upstream(route.To + position) == route.From + position)
                {
                    Claim(context, silence, claims, route.To + position, Routed, route.Index);
                }
            }
        }
    }

    private static void ClaimCabled(RuleContext context, Silence silence, Dictionary<int, (int Tag, int Order)> claims)
    {
        var intentions = Intentions.Of(context);
        foreach (var cable in context.Cables)
        {
            for (var position = 0; !cable.From.IsNone && position < cable.Model.From.Width; position++)
            {
                context.LookedAt();
                var output = cable.From + position;
                if (!silence.IsSilent(output) || context.Via(output) == HopKind.Cleared || intentions.IsDead(OutputChain.First(context, output)))
                {
                    continue;
                }

                if (intentions.IsLabelled(output) || OutputChain.PassesRoute(context, output))
                {
                    Claim(context, silence, claims, output, Cabled, cable.Index);
                }
                else if (!intentions.IsMarked(output))
                {
                    Claim(context, silence, claims, output, Idle, cable.Index);
                }
            }
        }
    }

    /// <summary>Claims what feeds are pinned to, and gives the outputs where a feed is pinned whose source does not exist.</summary>
    private static HashSet<int> ClaimPinned(RuleContext context, Silence silence, Dictionary<int, (int Tag, int Order)> claims)
    {
        var sourceless = new HashSet<int>();
        foreach (var demand in context.Demands)
        {
            if (demand.Feed is null || !demand.IsPinned || demand.Allowed.Count == 0 || context.GroupOf(demand.Allowed[0]).Kind != PortKind.Output)
            {
                continue;
            }

            context.LookedAt(demand.Width);
            for (var position = 0; position < demand.Width; position++)
            {
                // Of a source that does not exist the rules about the document speak.
                if (demand.Feed.Source.IsNone)
                {
                    sourceless.Add(OutputChain.First(context, demand.Allowed[0] + position).Value);
                }
                else
                {
                    Claim(context, silence, claims, demand.Allowed[0] + position, Pinned, demand.Index);
                }
            }
        }

        return sourceless;
    }

    /// <summary>Takes out the outputs where a pinned feed, or half a pinned pair, is missing: the rules about feeds name the place and the cause.</summary>
    private static void RemoveTold(RuleContext context, Dictionary<int, (int Tag, int Order)> claims)
    {
        foreach (var fault in FeedFaults.Collect(context))
        {
            foreach (var entry in fault.Missing)
            {
                RemovePins(context, claims, entry.Demand);
            }
        }

        CauseFinder? finder = null;
        var told = ExplainedByOtherRule.Of(context);
        foreach (var feed in context.Feeds)
        {
            if (feed.Width != 2 || !IsPinnedAnywhere(context, feed))
            {
                continue;
            }

            foreach (var entry in FeedDelivery.Entries(context, feed, told))
            {
                if (entry.State == EntryState.Half && (finder ??= CauseFinder.Of(context)).Find(feed, entry, entry.Left.IsNone ? 0 : 1) is not null)
                {
                    RemovePins(context, claims, entry.Demand);
                }
            }
        }
    }

    private static bool IsPinnedAnywhere(RuleContext context, FeedNode feed)
    {
        for (var entry = 0; entry < feed.Model.To.Count; entry++)
        {
            if (context.Demand(feed, entry) is { IsPinned: true, Existing.IsNone: true })
            {
                return true;
            }
        }

        return false;
    }

    private static void RemovePins(RuleContext context, Dictionary<int, (int Tag, int Order)> claims, DemandNode demand)
    {
        for (var position = 0; demand is { IsPinned: true, Allowed.Count: > 0 } && position < demand.Width; position++)
        {
            claims.Remove(OutputChain.First(context, demand.Allowed[0] + position).Value);
        }
    }

    private static void Claim(RuleContext context, Silence silence, Dictionary<int, (int Tag, int Order)> claims, PointIndex output, int tag, int order)
    {
        if (!silence.IsSilent(output) || silence.IsExplained(output))
        {
            return;
        }

        var first = OutputChain.First(context, output);
        if (!claims.TryGetValue(first.Value, out var known) || tag < known.Tag)
        {
            claims[first.Value] = (tag, order);
        }
    }

    private static void Report(RuleContext context, Silence silence, Dictionary<int, (int Tag, int Order)> claims, SinkRun run)
    {
        var at = context.Address(run.Sink, run.Width);
        var why = silence.Why(run.Sink, run.Width);
        var entity = Entity.Of("output", at);
        var silent = $"{at} {Wording.Verb(at, "is", "are")} silent: {why}.";
        if (run.Tag == Pinned)
        {
            var feeds = new List<string>();
            for (var position = 0; position < run.Width; position++)
            {
                var name = context.Demands[claims[run.Sink.Value + position].Order].DisplayName;
                if (!feeds.Contains(name))
                {
                    feeds.Add(name);
                }
            }

            var demand = context.Demands[run.Order];
            context.Report(
                $"{silent} {(feeds.Count == 1 ? "Feed" : "Feeds")} {Wording.Names(feeds)} shall come out there.",
                new Place(demand.Feed!.Model, "/feeds", demand.Feed.Index, "/to", demand.Entry).Pointer,
                entity
            );
        }
        else if (run.Tag == Routed)
        {
            context.ReportAs(
                Severity.Warning,
                $"{silent} A route of the patch leads there.",
                new Place(context.Routes[run.Order].Model, "/patch/routes", run.Order).Pointer,
                entity
            );
        }
        else
        {
            context.ReportAs(
                Severity.Warning,
                $"{silent} A cable leads on to {context.Cables[run.Order].Model.To}.",
                new Place(context.Cables[run.Order].Model, "/rig/cables", run.Order).Pointer,
                entity
            );
        }
    }

    private static void ReportIdle(RuleContext context, List<SinkRun> merged, HashSet<int> sourceless)
    {
        for (var i = 0; i < merged.Count; i++)
        {
            if (merged[i].Tag != Idle)
            {
                continue;
            }

            var device = context.DeviceOf(merged[i].Sink);
            var names = new List<string>();
            var isAsked = false;
            for (; i < merged.Count && context.DeviceOf(merged[i].Sink) == device; i++)
            {
                names.Add(context.Address(merged[i].Sink, merged[i].Width).ToString());
                isAsked |= Enumerable.Range(merged[i].Sink.Value, merged[i].Width).Any(sourceless.Contains);
            }

            i--;
            context.ReportAs(
                Severity.Note,
                $"Outputs of '{device.DisplayName}' are cabled but carry nothing, and no feed {(isAsked ? "whose source exists " : "")}asks for "
                    + $"them: {Wording.Names(names, false)}.",
                string.Create(CultureInfo.InvariantCulture, $"/rig/devices/{device.Index}"),
                [Entity.Of("device", device.Id), .. names.ConvertAll(name => Entity.Of("output", name))]
            );
        }
    }
}
