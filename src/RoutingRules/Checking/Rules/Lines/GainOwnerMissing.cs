using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Lines;

/// <summary>Reports inputs whose gain several consoles share without anybody owning it.</summary>
/// <remarks>One finding for each device; entities are the device and the inputs.</remarks>
public sealed class GainOwnerMissing : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR6006",
            Name = "gain-owner-missing",
            Title = "Nobody owns the gain of a shared input",
            Family = RuleFamily.Lines,
            Severity = Severity.Warning,
            Checks = "An input that serves lines on two or more consoles names the console that sets its gain.",
            Why = "When two engineers turn one gain, each change of one jumps out of the other's mix, ears included.",
            Remedy = "Agree which console owns the gain; the others follow with digital trim. Write it down as the input's gain owner.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        InputTable? table = null;
        var missing = new SinkRuns();
        foreach (var input in GainUse.Of(context).Shared())
        {
            context.LookedAt();
            if ((table ??= InputTable.Of(context)).Owner(input) is null)
            {
                missing.Add(input, PointIndex.None, context.DeviceOf(input).Index, 0);
            }
        }

        var runs = missing.IsEmpty ? [] : missing.Merge(context);
        for (var start = 0; start < runs.Count; )
        {
            var device = context.Devices[runs[start].Tag];
            var names = new List<string>();
            for (; start < runs.Count && runs[start].Tag == device.Index; start++)
            {
                names.Add(context.Address(runs[start].Sink, runs[start].Width).ToString());
            }

            context.Report(
                $"Two or more consoles get inputs of '{device.DisplayName}' and none owns the gain: {Wording.List(names)}.",
                $"/rig/devices/{device.Index}",
                [Entity.Of("device", device.Id), .. names.ConvertAll(name => Entity.Of("input", name))]
            );
        }
    }
}
