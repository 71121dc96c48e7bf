using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Lines;

/// <summary>Reports inputs of which two settings say different things: two gain owners, or phantom power on and off.</summary>
/// <remarks>One finding for each pair of settings that disagree.</remarks>
public sealed class GainOwnerDoubled : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR6007",
            Name = "gain-owner-doubled",
            Title = "Two settings for one input disagree",
            Family = RuleFamily.Lines,
            Severity = Severity.Error,
            Checks = "No two settings of an input name different gain owners, or say that phantom power is on and off.",
            Why = "Each crew follows its own line of the list: two consoles set the gain, or one switches off what the other needs.",
            Remedy = "Keep one setting for each input and take the other out.",
            Source = "common practice, no source",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        if (context.InputSettings.Count == 0)
        {
            return;
        }

        var table = InputTable.Of(context);
        SortedDictionary<(int Later, int Earlier, bool IsPhantom), List<PointIndex>>? clashes = null;
        for (var i = 0; i < context.InputSettings.Count; i++)
        {
            var settings = context.InputSettings[i];
            if (context.Find(settings.At, out var first) != ConnectionState.Connected)
            {
                continue;
            }

            context.LookedAt();
            for (var position = 0; position < settings.At.Width; position++)
            {
                var point = first + position;
                if (settings.GainOwner is { } owner && table.Owner(point) != owner)
                {
                    Add(clashes ??= [], (i, table.OwnerIndex(point), false), point);
                }

                if (settings.Phantom is { } phantom && table.Phantom(point) != phantom)
                {
                    Add(clashes ??= [], (i, table.IndexOf(point), true), point);
                }
            }
        }

        if (clashes is null)
        {
            return;
        }

        var once = new OnceOnly(context);
        foreach (var ((later, earlier, isPhantom), points) in clashes)
        {
            var at = context.Address(points[0], points.Count);
            var first = context.InputSettings[earlier];
            var second = context.InputSettings[later];
            var (role, what) = isPhantom
                ? ("phantom", $"phantom power is {(first.Phantom == true ? "on" : "off")} and {(second.Phantom == true ? "on" : "off")}")
                : ("gain", $"the gain belongs to '{first.GainOwner}' and to '{second.GainOwner}'");
            once.Report(
                $"Two settings for {at} disagree: {what}.",
                $"/patch/inputs/{later}",
                Entity.Of(role, at),
                Entity.Of("first", first.At),
                Entity.Of("second", second.At)
            );
        }
    }

    private static void Add(
        SortedDictionary<(int Later, int Earlier, bool IsPhantom), List<PointIndex>> clashes,
        (int Later, int Earlier, bool IsPhantom) key,
        PointIndex point
    )
    {
        if (!clashes.TryGetValue(key, out var points))
        {
            clashes.Add(key, points = []);
        }

        points.Add(point);
    }
}
