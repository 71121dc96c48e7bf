using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Lines;

/// <summary>Reports lines that need phantom power and do not get it, or of which nobody has said that they do.</summary>
/// <remarks>
/// One finding for each run of inputs where it is off or cannot be had, and one for each device on which nothing is said about inputs that need it; its
/// entities are the device and those inputs.
/// Silent where the patch says nothing about phantom power at any input of the device: then it is kept elsewhere.
/// </remarks>
public sealed class PhantomMissing : Rule<ResolvedShow>
{
    private const int Off = 0;
    private const int Unable = 1;

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR6003",
            Name = "phantom-missing",
            Title = "Phantom power missing where it is needed",
            Family = RuleFamily.Lines,
            Severity = Severity.Error,
            Severities = [Severity.Error, Severity.Warning],
            Checks =
                "Each line that requires phantom power gets it from an input on its path; a warning where nothing is said about the input although "
                + "something is said about others of the device.",
            Why = "A condenser microphone or an active direct box without its supply gives nothing, or a thin and noisy signal.",
            Remedy = "Mute the channel, switch phantom power on at one input of the line's path and write it down, or plug the line into an input that has it.",
            Source = "IEC 61938 (from memory); which sources need it: common practice, no source",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        InputTable? table = null;
        SinkRuns? wrong = null;
        Dictionary<int, LineNode>? lineAt = null;
        SortedDictionary<int, (List<LineNode> Lines, SinkRuns Inputs)>? unsaid = null;
        foreach (var (line, entries, supplies) in LineInputs.Of(context, PhantomNeed.Required))
        {
            table ??= InputTable.Of(context);
            if (Say(table, supplies, true))
            {
                context.LookedAt();
                continue;
            }

            var isUnsaid = Say(table, supplies, null);
            if (isUnsaid && !IsSpokenOf(context, table, supplies))
            {
                continue;
            }

            context.LookedAt();
            if (isUnsaid)
            {
                var device = context.DeviceOf(supplies[0]).Index;
                (unsaid ??= []).TryAdd(device, ([], new SinkRuns()));
                unsaid[device].Lines.Add(line);
                unsaid[device].Inputs.Add(supplies[0], PointIndex.None, 0, 0);
            }
            else
            {
                var at = supplies.Count > 0 ? supplies[0] : entries[0];
                (lineAt ??= []).TryAdd(at.Value, line);
                (wrong ??= new SinkRuns()).Add(at, PointIndex.None, supplies.Count > 0 ? Off : Unable, line.Index);
            }
        }

        foreach (var run in wrong?.Merge(context) ?? [])
        {
            ReportRun(context, table!, run, lineAt!);
        }

        if (unsaid is not null)
        {
            ReportUnsaid(context, unsaid);
        }
    }

    private static void ReportUnsaid(RuleContext context, SortedDictionary<int, (List<LineNode> Lines, SinkRuns Inputs)> unsaid)
    {
        foreach (var (index, (lines, at)) in unsaid)
        {
            var inputs = at.Merge(context).ConvertAll(run => context.Address(run.Sink, run.Width).ToString());
            var device = context.Devices[index];
            context.ReportAs(
                Severity.Warning,
                $"{LineInputs.Names(lines)} {(lines.Distinct().Count() == 1 ? "needs" : "need")} phantom power at '{device.DisplayName}', and "
                    + $"nothing is said about it at {Wording.Names(inputs, false)}.",
                $"/rig/devices/{index}",
                [Entity.Of("device", device.Id), .. inputs.ConvertAll(input => Entity.Of("input", input))]
            );
        }
    }

    /// <summary>True when the patch says of one of the inputs that phantom power is on or off there; for null, when it says nothing.</summary>
    private static bool Say(InputTable table, List<PointIndex> inputs, bool? phantom)
    {
        foreach (var input in inputs)
        {
            if (table.Phantom(input) == phantom)
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsSpokenOf(RuleContext context, InputTable table, List<PointIndex> inputs)
    {
        foreach (var input in inputs)
        {
            if (table.SpeaksOfPhantom(context.DeviceOf(input)))
            {
                return true;
            }
        }

        return false;
    }

    private static void ReportRun(RuleContext context, InputTable table, SinkRun run, Dictionary<int, LineNode> lineAt)
    {
        var inputs = context.Address(run.Sink, run.Width);
        var lines = new List<LineNode>();
        for (var position = 0; position < run.Width; position++)
        {
            lines.Add(lineAt[run.Sink.Value + position]);
        }

        var why = run.Tag == Off ? $"is off at {inputs}" : $"cannot come from {inputs}";
        context.Report(
            $"Phantom power {why}, but {LineInputs.Names(lines)} {(lines.Distinct().Count() == 1 ? "needs" : "need")} it.",
            run.Tag == Off ? $"/patch/inputs/{table.IndexOf(run.Sink)}" : $"/lines/{run.Order}/phantom",
            Entity.Of("input", inputs)
        );
    }
}
