using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Lines;

/// <summary>Reports analogue splits that two inputs feed with phantom power at once.</summary>
/// <remarks>
/// Legs that do not pass phantom power do not count. One finding for each run of neighbouring ways of a split, and one for each line with several inputs.
/// </remarks>
public sealed class PhantomFedTwice : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR6005",
            Name = "phantom-fed-twice",
            Title = "Phantom power from two supplies",
            Family = RuleFamily.Lines,
            Severity = Severity.Error,
            Checks = "Of the inputs that an analogue split joins, one at most supplies phantom power.",
            Why =
                "Two supplies on one line work against each other through their feed resistors: hum, a wrong voltage, and a loud click when one of "
                + "them is switched off.",
            Remedy = "Agree on one supply, the leg that is never unplugged; mute the channels and switch phantom power off at the others.",
            Source = "IEC 61938 feed resistors (from memory); one supply on a split: common practice, no source",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        if (!InputTable.Of(context).SpeaksOfPhantom())
        {
            return;
        }

        var table = InputTable.Of(context);
        CheckSplits(context, table);
        foreach (var line in context.Lines)
        {
            CheckLine(context, table, line);
        }
    }

    private static void CheckSplits(RuleContext context, InputTable table)
    {
        SinkRuns? found = null;
        foreach (var device in context.Devices)
        {
            foreach (var group in IsSplit(device) ? device.Groups : [])
            {
                for (var i = 0; group.Kind == PortKind.Input && i < group.Count; i++)
                {
                    var entry = device.First(group) + i;
                    context.LookedAt();
                    if (context.Upstream(entry).IsNone && On(context, table, entry).Count > 1)
                    {
                        (found ??= new SinkRuns()).Add(entry, PointIndex.None, 0, table.IndexOf(On(context, table, entry)[1]));
                    }
                }
            }
        }

        foreach (var run in found?.Merge(context) ?? [])
        {
            var at = context.Address(run.Sink, run.Width);
            var supplies = On(context, table, run.Sink).ConvertAll(input => context.Address(input).ToString());
            context.Report(
                $"{at} {Wording.Verb(at, "gets", "get")} phantom power from more than one input: "
                    + $"{Wording.List(supplies)}{(run.Width > 1 ? " and the ones beside them" : "")} have it on.",
                $"/patch/inputs/{run.Order}",
                Entity.Of("split", at)
            );
        }
    }

    private static void CheckLine(RuleContext context, InputTable table, LineNode line)
    {
        if (line.Model.From.At.Count < 2)
        {
            return;
        }

        context.LookedAt();
        var doubled = new List<string>();
        for (var position = 0; position < line.Width; position++)
        {
            var on = new List<PointIndex>();
            var legs = 0;
            foreach (var run in LineDelivery.Entries(context, line))
            {
                var here = On(context, table, run + position);
                legs += here.Count > 0 ? 1 : 0;
                on.AddRange(here);
            }

            if (legs > 1)
            {
                doubled.AddRange(on.ConvertAll(input => context.Address(input).ToString()));
            }
        }

        if (doubled.Count > 0)
        {
            context.Report(
                $"Line '{line.DisplayName}' is split to several inputs, and more than one supplies phantom power: {Wording.List(doubled)}.",
                $"/lines/{line.Index}/from",
                [Entity.Of("line", line.Model.Id), .. doubled.ConvertAll(input => Entity.Of("input", input))]
            );
        }
    }

    private static bool IsSplit(DeviceNode device)
    {
        foreach (var path in device.Profile.Through)
        {
            if (path is { Kind: ThroughKind.Passive, Phantom: true })
            {
                return true;
            }
        }

        return false;
    }

    private static List<PointIndex> On(RuleContext context, InputTable table, PointIndex entry)
    {
        var supplies = PhantomPath.Supplies(context, entry);
        supplies.RemoveAll(input => table.Phantom(input) != true);
        return supplies;
    }
}
