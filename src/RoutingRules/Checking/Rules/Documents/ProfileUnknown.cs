using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Documents;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Signal;

namespace RoutingRules.Checking.Rules.Documents;

/// <summary>Reports device profiles that are not to be had. One finding for each profile, however many devices name it.</summary>
public sealed class ProfileUnknown : Rule<DeviceNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR1105",
            Name = "profile-unknown",
            Title = "Device profile not found",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks = "The profile of every device is written into the show or comes from a profile source at hand, and can be read.",
            Why = "Without its profile nobody knows what connectors a device has, so nothing that is patched to it can be checked.",
            Remedy = "Correct the profile's name, write the profile into the show, or add the source it comes from.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, DeviceNode subject)
    {
        if (subject.ProfileState == ProfileState.Found)
        {
            return;
        }

        var names = new List<string>();
        foreach (var device in context.Devices)
        {
            if (device.Model.Profile == subject.Model.Profile && device.ProfileState == subject.ProfileState)
            {
                names.Add(device.DisplayName);
            }
        }

        if (Previous(context, subject))
        {
            return;
        }

        var profile = subject.Model.Profile;
        var devices = $"{(names.Count == 1 ? "device" : "devices")} {Wording.Names(names)}";
        var message = subject.ProfileState switch
        {
            ProfileState.Unknown => $"The profile '{profile}' of {devices} is not known; what these connectors are cannot be told.",
            ProfileState.Unreadable => $"The profile '{profile}' of {devices} was found but cannot be read; its source must be mended.",
            _ => $"The rig has more than {ShowResolver.MaxPoints} points; {devices} with profile '{profile}' were left out. Split the rig.",
        };
        context.Report(message, new Place(subject.Model, "/rig/devices", subject.Index, "/profile").Pointer, Entity.Of("profile", profile));
    }

    private static bool Previous(RuleContext context, DeviceNode subject)
    {
        for (var i = 0; i < subject.Index; i++)
        {
            var device = context.Devices[i];
            if (device.Model.Profile == subject.Model.Profile && device.ProfileState == subject.ProfileState)
            {
                return true;
            }
        }

        return false;
    }
}
