using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Lines;

/// <summary>Reports line-level outputs that are cabled to an input with phantom power on, and lines at line level that are plugged in there.</summary>
/// <remarks>
/// Isolated outputs and passive paths for phantom power are exempt, and so are lines that forbid it: that has a rule of its own. One finding for each run of
/// neighbouring inputs; of lines one for each.
/// </remarks>
public sealed class PhantomAtRisk : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR6013",
            Name = "phantom-at-risk",
            Title = "Phantom power against an output or a line at line level",
            Family = RuleFamily.Lines,
            Severity = Severity.Warning,
            Checks =
                "No output at line or headphone level that is not isolated is cabled to an input with phantom power on, least of all one that "
                + "feeds broadcast, recording or assistive listening; and no line of kind line is plugged in where it is on.",
            Why =
                "Phantom power runs back into the output: it may harm it, and the feed hums, distorts or falls silent at a place where nobody of "
                + "the crew hears it.",
            Remedy =
                "Mute, switch phantom power off at the named input, or put an isolating transformer in between. An active direct box gives "
                + "microphone level: write its line as a microphone.",
            Source =
                "IEC 61938 (from memory); isolated outputs for broadcast and recording, no phantom power for players and instruments: common "
                + "practice, no source",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        InputTable? table = null;
        SinkRuns? found = null;
        for (var i = 0; i < context.InputSettings.Count; i++)
        {
            var settings = context.InputSettings[i];
            if (settings.Phantom != true || context.Find(settings.At, out var first) != ConnectionState.Connected)
            {
                continue;
            }

            table ??= InputTable.Of(context);
            for (var position = 0; position < settings.At.Width; position++)
            {
                context.LookedAt();
                var input = first + position;
                if (
                    table.IndexOf(input) == i
                    && context.Via(input) == HopKind.Cable
                    && IsAtRisk(context, context.Upstream(input))
                    && context.DemandAt(input)?.Line?.Model.Phantom != PhantomNeed.Forbidden
                )
                {
                    (found ??= new SinkRuns()).Add(input, context.Upstream(input), 0, i);
                }
            }
        }

        foreach (var run in found?.Merge(context) ?? [])
        {
            Report(context, run);
        }

        CheckLines(context);
    }

    private static void CheckLines(RuleContext context)
    {
        foreach (var line in context.Lines)
        {
            if (
                line.Model.Kind != LineKind.Line
                || line.Model.Phantom == PhantomNeed.Forbidden
                || line.Model.From.Source is not null
                || context.InputSettings.Count == 0
            )
            {
                continue;
            }

            var table = InputTable.Of(context);
            SinkRuns? found = null;
            var isSaid = false;
            for (var position = 0; position < line.Width; position++)
            {
                foreach (var input in LineInputs.SuppliesOf(context, line, position))
                {
                    isSaid |= table.Phantom(input) is not null;
                    if (table.Phantom(input) == true)
                    {
                        (found ??= new SinkRuns()).Add(input, PointIndex.None, 0, table.IndexOf(input));
                    }
                }
            }

            context.LookedAt(isSaid ? 1 : 0);

            foreach (var run in found?.Merge(context) ?? [])
            {
                var inputs = context.Address(run.Sink, run.Width);
                context.Report(
                    $"Phantom power is on at {inputs}, against '{line.DisplayName}', which is at line "
                        + $"level{(line.Model.Phantom == PhantomNeed.Required ? " and yet said to need it" : "")}.",
                    $"/patch/inputs/{run.Order}",
                    Entity.Of("input", inputs),
                    Entity.Of("line", line.Model.Id)
                );
            }
        }
    }

    private static bool IsAtRisk(RuleContext context, PointIndex output)
    {
        var group = context.GroupOf(output);
        var level = group.Model.Level;
        return !group.Model.Isolated
            && (level == SignalLevel.Line || level == SignalLevel.Headphone)
            && (context.Upstream(output).IsNone || !PhantomPath.IsPassing(context, context.Upstream(output), output));
    }

    private static void Report(RuleContext context, SinkRun run)
    {
        var inputs = context.Address(run.Sink, run.Width);
        var outputs = context.Address(run.Source, run.Width);
        var names = new List<string>();
        for (var position = 0; position < run.Width; position++)
        {
            var feed = Feed(context, run.Source + position);
            if (feed is not null && !names.Contains($"'{feed.DisplayName}'"))
            {
                names.Add($"'{feed.DisplayName}'");
            }
        }

        context.Report(
            $"Phantom power is on at {inputs}, against the output {outputs}{(names.Count == 0 ? "" : $" of {Wording.List(names)}")}.",
            $"/patch/inputs/{run.Order}",
            Entity.Of("input", inputs),
            Entity.Of("output", outputs)
        );
    }

    private static FeedNode? Feed(RuleContext context, PointIndex output)
    {
        foreach (var point in context.Upward(context.Origin(output).IsNone ? PointIndex.None : output))
        {
            if (context.DemandAt(point)?.Feed is { } feed)
            {
                return feed;
            }
        }

        return null;
    }
}
