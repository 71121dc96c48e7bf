using System.Globalization;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Documents;

/// <summary>Reports device profiles that contradict themselves. One finding for each profile, however many devices name it.</summary>
public sealed class ProfileUnsound : Rule<DeviceNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR1106",
            Name = "profile-unsound",
            Title = "Device profile contradicts itself",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks = "The profile of every device speaks only of port groups it has, routes only from sources to sinks, and gives no sink two fixed sources.",
            Why = "Where a profile contradicts itself the engine has to leave a part of it out, and what it says about the device may be wrong.",
            Remedy = "Mend the profile, or take a newer version of it.",
            Source = "AMWA IS-08 v1.0.1, Behaviour, Channel Block Sizes, for whole blocks; else common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, DeviceNode subject)
    {
        var problems = context.ProfileProblems(subject);
        if (problems.IsEmpty || Reported(context, subject))
        {
            return;
        }

        var more = problems.Count switch
        {
            1 => "",
            2 => " There is one more problem.",
            var count => string.Create(CultureInfo.InvariantCulture, $" There are {count - 1} more problems."),
        };
        context.Report(
            $"The profile '{subject.Profile.Id}' of device '{subject.DisplayName}' contradicts itself. {problems[0].Message}{more}",
            Pointer(context, subject, problems[0]),
            [Entity.Of("profile", subject.Profile.Id), .. problems.Select(problem => Entity.Of("place", problem.Pointer))]
        );
    }

    /// <summary>True when an earlier device of the same profile has shown its problems; another sample rate can bring others to light.</summary>
    private static bool Reported(RuleContext context, DeviceNode subject)
    {
        for (var i = 0; i < subject.Index; i++)
        {
            var device = context.Devices[i];
            if (device.Model.Profile == subject.Model.Profile && !context.ProfileProblems(device).IsEmpty)
            {
                return true;
            }
        }

        return false;
    }

    private static string Pointer(RuleContext context, DeviceNode device, ProfileProblem problem)
    {
        var profiles = context.Rig.Profiles;
        for (var i = 0; i < profiles.Count; i++)
        {
            if (profiles[i].Id == device.Model.Profile)
            {
                return string.Create(CultureInfo.InvariantCulture, $"/rig/profiles/{i}{problem.Pointer}");
            }
        }

        return string.Create(CultureInfo.InvariantCulture, $"/rig/devices/{device.Index}/profile");
    }
}
