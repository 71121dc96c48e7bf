using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Lines;

/// <summary>Reports gain owners and followers that are no console, or a console that does not get the input.</summary>
/// <remarks>
/// Silent about inputs that reach no channel, and about a console that a line at the input names but does not reach: the line's rule says so. One finding for
/// each setting and device.
/// </remarks>
public sealed class GainOwnerUnreachable : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR6008",
            Name = "gain-owner-unreachable",
            Title = "Gain owner or follower does not get the input",
            Family = RuleFamily.Lines,
            Severity = Severity.Warning,
            Checks = "Gain owners and followers are consoles, and the input arrives at them.",
            Why = "A console that does not get the input cannot hear what its gain does; a follower without the input trims nothing.",
            Remedy = "Name a console that gets the input, or patch the input to the console named.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        if (context.InputSettings.Count == 0)
        {
            return;
        }

        var use = GainUse.Of(context);
        var once = new OnceOnly(context);
        for (var i = 0; i < context.InputSettings.Count; i++)
        {
            var settings = context.InputSettings[i];
            if (context.Find(settings.At, out var first) != ConnectionState.Connected || context.GroupOf(first).Kind != PortKind.Input)
            {
                continue;
            }

            if (settings.GainOwner is { } owner)
            {
                Judge(context, use, once, settings, first, owner, "gainOwner", "owner", $"/patch/inputs/{i}/gainOwner");
            }

            for (var follower = 0; follower < settings.GainFollowers.Count; follower++)
            {
                Judge(
                    context,
                    use,
                    once,
                    settings,
                    first,
                    settings.GainFollowers[follower],
                    "gainFollower",
                    "follower",
                    $"/patch/inputs/{i}/gainFollowers/{follower}"
                );
            }
        }
    }

    private static void Judge(
        RuleContext context,
        GainUse use,
        OnceOnly once,
        InputSettings settings,
        PointIndex first,
        Id<Device> id,
        string role,
        string word,
        string pointer
    )
    {
        if (context.Device(id) is not { ProfileState: ProfileState.Found } device)
        {
            return;
        }

        context.LookedAt();
        if (device.Profile.Kind != DeviceKind.Console)
        {
            once.Report(
                $"The gain {word} of {settings.At}, '{device.DisplayName}', is not a console.",
                pointer,
                Entity.Of("input", settings.At),
                Entity.Of(role, id)
            );
            return;
        }

        var isUsed = false;
        for (var position = 0; position < settings.At.Width; position++)
        {
            if (use.IsWanted(first + position, id) || use.Reaches(first + position, id, ref isUsed))
            {
                return;
            }
        }

        if (isUsed)
        {
            once.Report(
                $"The gain {word} of {settings.At}, '{device.DisplayName}', does not get {Wording.Verb(settings.At, "that input", "those inputs")}.",
                pointer,
                Entity.Of("input", settings.At),
                Entity.Of(role, id)
            );
        }
    }
}
