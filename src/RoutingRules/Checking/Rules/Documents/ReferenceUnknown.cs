using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Documents;
using RoutingRules.Documents.Tables;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Documents;

/// <summary>Reports ids and addresses that name something the show does not have.</summary>
/// <remarks>
/// One finding for each missing thing, however often it is named. Points of a device whose profile is unknown or unsound are left to those rules.
/// </remarks>
public sealed class ReferenceUnknown : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR1101",
            Name = "reference-unknown",
            Title = "Name of something that is not there",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks = "Every device, port group, zone, clock, network and feed that is named anywhere in the show exists.",
            Why = "A route, stream or cable to something that does not exist connects nothing, and the mix behind it stays silent.",
            Remedy = "Correct the spelling, or add what is missing to the rig.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        context.LookedAt(PlacesThatName.Points(context) + PlacesThatName.Others(context));
        List<Missing>? found = null;
        Dictionary<(string Kind, string Id), Missing>? byName = null;
        new NameWalk(context, (kind, id, place) => Add(kind, id, null, place)).Visit();
        foreach (var (at, state, place) in AddressWalk.Broken(context))
        {
            if (state != ConnectionState.UnknownReference)
            {
                continue;
            }

            if (context.Device(at.Device) is not { } device)
            {
                Add("device", at.Device.Value, null, place);
            }
            else if (device.ProfileState == ProfileState.Found && context.ProfileProblems(device).IsEmpty)
            {
                Add("group", $"{at.Device}/{at.Group}", device, place);
            }
        }

        foreach (var missing in found ?? [])
        {
            Report(context, missing);
        }

        void Add(string kind, string id, DeviceNode? device, Place place)
        {
            if (!(byName ??= []).TryGetValue((kind, id), out var known))
            {
                known = new Missing
                {
                    Kind = kind,
                    Id = id,
                    Device = device,
                };
                byName.Add((kind, id), known);
                (found ??= []).Add(known);
            }

            known.Places.Add(place);
        }
    }

    private static void Report(RuleContext context, Missing missing)
    {
        var name = missing.Device is null ? missing.Id : missing.Id[(missing.Device.Id.Value.Length + 1)..];
        var lacking =
            missing.Device is { } device ? $"Device '{device.Id}' has no port group '{name}'"
            : missing.Kind == "feed" ? $"There is no feed '{name}' in the show"
            : $"There is no {missing.Kind} '{name}' in the rig";
        var others = missing.Places.Count switch
        {
            1 => "",
            2 => " and in one other place",
            var places => $" and in {places - 1} other places",
        };
        var near = Spelling.Nearest(name, Candidates(context, missing).Order(StringComparer.Ordinal));
        var hint = near is null ? "" : $" Did you mean '{near}'?";
        context.Report(
            $"{lacking}, but it is named in {missing.Places[0].Name}{others}.{hint}",
            missing.Places[0].Pointer,
            [Entity.Of(missing.Kind, missing.Id), .. Identities.Places(missing.Places)]
        );
    }

    private static IEnumerable<string> Candidates(RuleContext context, Missing missing) =>
        missing.Kind switch
        {
            "group" => missing.Device!.Groups.Select(group => group.Id.Value),
            "device" => context.Devices.Select(device => device.Id.Value),
            "zone" => context.Rig.Zones.Select(zone => zone.Id.Value),
            "clock" => context.Rig.Clocks.Select(clock => clock.Id.Value),
            "network" => context.Rig.Networks.Select(network => network.Id.Value),
            _ => context.Feeds.Select(feed => feed.Model.Id.Value),
        };

    private sealed class Missing
    {
        public required string Kind { get; init; }

        public required string Id { get; init; }

        public required DeviceNode? Device { get; init; }

        /// <summary>Where it is named, the place that is shown first.</summary>
        public List<Place> Places { get; } = [];
    }
}
