using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Hearing;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Hearing;

/// <summary>Reports what gets into somebody's ears without being meant for them: by a feed for others, at the pin of an in-ear feed, or unasked.</summary>
/// <remarks>
/// Ears are where the signal ends: transmitter racks, headphone outputs, groups marked in-ear, whatever the feed is called. One finding for each entry of
/// a feed for others, one for each in-ear feed, and one for each run of points in the ears; the rules about single feeds and stray outputs leave these out.
/// </remarks>
public sealed class InEarCarriesOther : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR9003",
            Name = "in-ear-carries-other",
            Title = "Wrong and dangerous signal in somebody's ears",
            Family = RuleFamily.Hearing,
            Severity = Severity.Error,
            Checks =
                "What ends at a transmitter rack, a headphone output or a point marked in-ear is a mix that a feed has there, and that feed is not "
                + "for loudspeakers, a recorder, broadcast, evacuation, talkback, click or comms. Where an in-ear feed is pinned there is no main "
                + "mix, no talkback, click or comms bus and no bare input.",
            Why =
                "Such signals are not limited and levelled for ears: a main mix, a player or an open microphone at line level can harm hearing in "
                + "a moment, whatever the feed is called.",
            Remedy =
                "Have the earpieces taken out, mute the transmitter, then clear the input or patch the in-ear mix back, and bring it up at low "
                + "level. What is meant for ears needs a feed of role in-ear with a limiter. Sound exposure limits and local rules apply.",
            Source = "common practice, no source; WHO venues standard and NIOSH for exposure",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var ears = EarFeeds.Of(context);
        context.LookedAt(ears.Count + context.Ears.All.Count);
        foreach (var feed in context.Feeds)
        {
            var isTold = false;
            for (var entry = 0; entry < feed.Model.To.Count; entry++)
            {
                var demand = context.Demand(feed, entry);
                if (ears.MisplacedAt(demand) is { IsNone: false } end)
                {
                    ReportRole(context, feed, demand, end);
                }
                else if (!isTold && ears.DangerAt(demand, out var position) is { IsNone: false } source)
                {
                    isTold = true;
                    ReportPin(context, ears, feed, demand, position, source);
                }
            }
        }

        ReportUnasked(context, ears);
    }

    private static void ReportRole(RuleContext context, FeedNode feed, DemandNode demand, PointIndex end)
    {
        var place = EarFeeds.Place(context, demand);
        var way = place.IsNone || place == end ? "" : $" by way of {context.Address(place, demand.Width)}";
        context.Report(
            $"Feed '{feed.DisplayName}' ({feed.Model.Role}) goes into somebody's ears at {EarWords.At(context, end, 1)}{way}.",
            $"/feeds/{feed.Index}/to/{demand.Entry}",
            Entity.Of("feed", feed.Model.Id),
            Entity.Of("output", place.IsNone ? context.Address(end, 1) : context.Address(place, demand.Width))
        );
    }

    private static void ReportPin(RuleContext context, EarFeeds ears, FeedNode feed, DemandNode demand, int position, PointIndex source)
    {
        var point = EarFeeds.Place(context, demand) + position;
        var at = context.Address(point);
        context.Report(
            $"{at} is for in-ear feed '{feed.DisplayName}' but carries {context.Address(source)}, {ears.Danger(source, context.Ears.Contains(point))}.",
            $"/feeds/{feed.Index}/to/{demand.Entry}",
            Entity.Of("output", at),
            Entity.Of("feed", feed.Model.Id)
        );
    }

    private static void ReportUnasked(RuleContext context, EarFeeds ears)
    {
        var dangers = new List<string>();
        var runs = new SinkRuns();
        foreach (var (end, source) in ears.Unasked())
        {
            var danger = ears.Danger(source, true)!;
            if (!dangers.Contains(danger))
            {
                dangers.Add(danger);
            }

            runs.Add(end, source, dangers.IndexOf(danger), 0);
        }

        foreach (var run in runs.IsEmpty ? [] : runs.Merge(context))
        {
            var inputs = context.Address(run.Sink, run.Width);
            context.Report(
                $"{EarWords.At(context, run.Sink, run.Width)} {EarWords.Kind(context, run.Sink)} {Wording.Verb(inputs, "carries", "carry")} "
                    + $"{context.Address(run.Source, run.Width)}, {dangers[run.Tag]}, and no in-ear feed asks for it.",
                $"/rig/devices/{context.DeviceOf(run.Sink).Index}",
                Entity.Of("input", inputs)
            );
        }
    }
}
