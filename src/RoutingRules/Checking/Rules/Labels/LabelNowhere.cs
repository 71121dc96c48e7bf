using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Labels;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Labels;

/// <summary>Reports labels on outputs and channels that carry nothing, and points with two different labels.</summary>
/// <remarks>
/// Silent about outputs and channels that a cable, a route, a feed or a line speaks of, about dead and reserved ones, about what a broken
/// connection explains, and about a text that a feed's bus has too while the feed is missing: other rules say why nothing arrives.
/// </remarks>
public sealed class LabelNowhere : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR7006",
            Name = "label-nowhere",
            Title = "Label on nothing, or two labels on one point",
            Family = RuleFamily.Labels,
            Severity = Severity.Note,
            Severities = [Severity.Warning, Severity.Note],
            Checks = "A labelled output or channel carries something; no point has two different labels (a warning).",
            Why = "A leftover label sends people to a dead connector; of two labels nobody knows which one the device shows.",
            Remedy = "Take the leftover label out, or patch what it promises; of two labels keep one.",
            Source = "common practice, no source",
            Fixability = Fixability.Safe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        if (context.Labels.Count == 0)
        {
            return;
        }

        var table = LabelTable.Of(context);
        context.LookedAt(table.Points.Count);
        ReportDoubled(context, table);
        var intentions = Intentions.Of(context);
        Silence? silence = null;
        HashSet<string>? missing = null;
        var found = new SinkRuns();
        foreach (var label in table.Points)
        {
            if (
                context.GroupOf(label.Point).Kind is PortKind.Output or PortKind.Sink
                && (silence ??= Silence.Of(context)).IsSilent(label.Point)
                && !IsSpokenOf(context, intentions, label.Point)
                && !silence.IsExplained(label.Point)
                && !(missing ??= Missing(context, table)).Contains(LabelText.Normal(label.Text))
            )
            {
                found.Add(label.Point, PointIndex.None, 0, label.Index);
            }
        }

        foreach (var run in found.IsEmpty ? [] : found.Merge(context))
        {
            var at = context.Address(run.Sink, run.Width);
            var text = run.Width == 1 ? $"'{table.At(run.Sink)?.Text}'" : $"'{table.At(run.Sink)?.Text}' to '{table.At(run.Sink + (run.Width - 1))?.Text}'";
            context.Report(
                $"{at} {Wording.Verb(at, "is", "are")} labelled {text} but {Wording.Verb(at, "carries", "carry")} nothing.",
                $"/patch/labels/{run.Order}",
                Entity.Of("point", at)
            );
        }
    }

    private static bool IsSpokenOf(RuleContext context, Intentions intentions, PointIndex point)
    {
        if (intentions.IsNamed(point) || intentions.IsMarked(point) || intentions.IsCabled(point))
        {
            return true;
        }

        foreach (var passed in context.Upward(point))
        {
            if (context.Via(passed) == HopKind.Route)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The labels of the buses of feeds that are not served everywhere.</summary>
    private static HashSet<string> Missing(RuleContext context, LabelTable table)
    {
        var texts = new HashSet<string>(StringComparer.Ordinal);
        var intentions = Intentions.Of(context);
        foreach (var feed in context.Feeds)
        {
            for (var position = 0; !feed.Source.IsNone && position < feed.Width && !intentions.IsServed(feed); position++)
            {
                if (table.At(feed.Source + position) is { } label)
                {
                    texts.Add(LabelText.Normal(label.Text));
                }
            }
        }

        return texts;
    }

    private static void ReportDoubled(RuleContext context, LabelTable table)
    {
        var told = new HashSet<PointIndex>();
        for (var i = 0; i < context.Labels.Count; i++)
        {
            var label = context.Labels[i];
            if (context.Find(label.At, out var first) != ConnectionState.Connected)
            {
                continue;
            }

            for (var position = 0; position < label.At.Width; position++)
            {
                if (table.At(first + position) is { } kept && kept.Index != i && !LabelText.AreSame(kept.Text, label.Text) && told.Add(first + position))
                {
                    context.ReportAs(
                        Severity.Warning,
                        $"{context.Address(first + position)} has two labels, '{kept.Text}' and '{label.Text}'.",
                        $"/patch/labels/{i}",
                        Entity.Of("labelled-twice", context.Address(first + position))
                    );
                }
            }
        }
    }
}
