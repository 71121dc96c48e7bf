using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Lines;

/// <summary>Reports phantom power that is on at inputs of lines that must not get it.</summary>
/// <remarks>One finding for each run of neighbouring inputs.</remarks>
public sealed class PhantomForbidden : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR6004",
            Name = "phantom-forbidden",
            Title = "Phantom power on where it must be off",
            Family = RuleFamily.Lines,
            Severity = Severity.Error,
            Checks = "No input on the path of a line that forbids phantom power has it switched on.",
            Why =
                "Phantom power can harm outputs of players, keyboards and receivers and some ribbon microphones, and it thumps through the system "
                + "when it is plugged.",
            Remedy = "Mute the channel, switch phantom power off at the named input and wait until it has drained before plugging.",
            Source = "IEC 61938 (from memory); which sources must not get it: common practice, no source",
            Fixability = Fixability.Safe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        InputTable? table = null;
        SinkRuns? found = null;
        var lineAt = new Dictionary<int, LineNode>();
        foreach (var (line, _, supplies) in LineInputs.Of(context, PhantomNeed.Forbidden))
        {
            table ??= InputTable.Of(context);
            foreach (var input in supplies)
            {
                context.LookedAt(table.Phantom(input) is null ? 0 : 1);
                if (table.Phantom(input) == true && lineAt.TryAdd(input.Value, line))
                {
                    (found ??= new SinkRuns()).Add(input, PointIndex.None, 0, line.Index);
                }
            }
        }

        foreach (var run in found?.Merge(context) ?? [])
        {
            var inputs = context.Address(run.Sink, run.Width);
            var lines = new List<LineNode>();
            for (var position = 0; position < run.Width; position++)
            {
                lines.Add(lineAt[run.Sink.Value + position]);
            }

            context.Report(
                $"Phantom power is on at {inputs}, but {LineInputs.Names(lines)} must not get it.",
                $"/patch/inputs/{table!.IndexOf(run.Sink)}",
                Entity.Of("input", inputs)
            );
        }
    }
}
