using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports stage boxes with feeds and too few free outputs.</summary>
public sealed class SparesTooFew : Rule<DeviceNode>
{
    private static readonly RuleOption MinimumOutputs = new()
    {
        Name = "minimumOutputs",
        Doc = "How many working, free line outputs a stage box that serves feeds should keep.",
        Default = 1,
        Minimum = 0,
        Maximum = 64,
        IsWhole = true,
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3012",
            Name = "spares-too-few",
            Title = "Stage box without a spare output",
            Family = RuleFamily.Feeds,
            Severity = Severity.Note,
            Checks = "A stage box that serves feeds has at least the set number of line outputs that work, are not reserved, not cabled and serve nothing.",
            Why = "A late extra mix or a broken connector needs an output at once, at the box where the people stand.",
            Remedy = "Move a feed that may stand elsewhere, or bring a larger box.",
            Source = "common practice, no source",
            Fixability = Fixability.None,
            Options = [MinimumOutputs],
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, DeviceNode subject)
    {
        if (subject.Profile.Kind != DeviceKind.StageBox)
        {
            context.LookedAt(0);
            return;
        }

        var intentions = Intentions.Of(context);
        var free = 0;
        var serving = 0;
        foreach (var group in subject.Groups)
        {
            for (var i = 0; group.IsLineOutput && i < group.Count; i++)
            {
                var output = subject.First(group) + i;
                if (context.DemandAt(output)?.Feed is not null)
                {
                    serving++;
                }
                else if (!intentions.IsFeedPin(output) && !intentions.IsCabled(output) && context.MarkOf(output) is null)
                {
                    free++;
                }
            }
        }

        context.LookedAt(serving > 0 ? 1 : 0);
        var lacking = context.WholeValue(MinimumOutputs) - free;
        if (serving > 0 && lacking > 0)
        {
            context.Report(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"'{subject.DisplayName}' serves feeds at {serving} {(serving == 1 ? "output" : "outputs")} and has {(free == 0 ? "none" : free)} free."
                ),
                $"/rig/devices/{subject.Index}",
                [Entity.Of("device", subject.Id), .. Identities.Further("lacking", lacking)]
            );
        }
    }
}
