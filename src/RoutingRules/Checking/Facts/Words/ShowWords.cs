using RoutingRules.Documents.Tables;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Words;

/// <summary>Goes through the words of open lists in a show and in the profiles of its devices.</summary>
internal static class ShowWords
{
    /// <summary>The doubtful words of the show that a rule sees, as the run knows them already.</summary>
    public static List<DoubtfulWord> Doubtful(RuleContext context, ResolvedShow show) => context.Shared(_ => Doubtful(show));

    /// <summary>The doubtful words, in document order; those of one profile once, however many devices have it.</summary>
    public static List<DoubtfulWord> Doubtful(ResolvedShow show)
    {
        var found = new List<DoubtfulWord>();
        foreach (var feed in show.Feeds)
        {
            Add(found, KnownWords.Roles, "role", feed.Model.Role.Value, "feed", feed.Model.Id.Value, "/feeds", feed.Index);
            Add(found, KnownWords.Parts, "part", feed.Model.Part, "feed", feed.Model.Id.Value, "/feeds", feed.Index);
        }

        var rig = show.Document.Rig;
        for (var i = 0; i < rig.Networks.Count; i++)
        {
            Add(found, KnownWords.Transports, "transport", rig.Networks[i].Transport.Value, "network", rig.Networks[i].Id.Value, "/rig/networks", i);
        }

        for (var i = 0; i < rig.Links.Count; i++)
        {
            Add(found, KnownWords.Media, "medium", rig.Links[i].Medium?.Value, "link", rig.Links[i].Id.Value, "/rig/links", i);
        }

        var profiles = new HashSet<Id<DeviceProfile>>();
        foreach (var device in show.Devices)
        {
            if (device.ProfileState == ProfileState.Found && profiles.Add(device.Profile.Id))
            {
                AddProfile(found, rig, device);
            }
        }

        return found;
    }

    /// <summary>The show with the words that are meant; a profile from elsewhere that holds doubtful ones is written into it.</summary>
    public static Show AsMeant(ResolvedShow show)
    {
        var document = show.Document;
        var rig = document.Rig;
        var profiles = new List<DeviceProfile>(rig.Profiles.Select(AsMeant));
        var own = rig.Profiles.Select(profile => profile.Id).ToHashSet();
        foreach (var device in show.Devices)
        {
            if (device.ProfileState == ProfileState.Found && own.Add(device.Profile.Id) && AsMeant(device.Profile) is var meant && meant != device.Profile)
            {
                profiles.Add(meant);
            }
        }

        return document with
        {
            Feeds = document.Feeds.Select(AsMeant).ToValueList(),
            Rig = rig with
            {
                Networks = rig.Networks.Select(AsMeant).ToValueList(),
                Links = rig.Links.Select(AsMeant).ToValueList(),
                Profiles = profiles.ToValueList(),
            },
        };
    }

    public static Feed AsMeant(Feed feed) =>
        feed with
        {
            Role = KnownWords.Roles.Meant(feed.Role.Value) is { } role ? new FeedRole(role) : feed.Role,
            Part = feed.Part is { } part ? KnownWords.Parts.Meant(part) ?? part : null,
        };

    public static Network AsMeant(Network network) =>
        KnownWords.Transports.Meant(network.Transport.Value) is { } transport ? network with { Transport = new Transport(transport) } : network;

    public static Link AsMeant(Link link) =>
        link.Medium is { } medium && KnownWords.Media.Meant(medium.Value) is { } meant ? link with { Medium = new Medium(meant) } : link;

    public static DeviceProfile AsMeant(DeviceProfile profile) =>
        profile with
        {
            Kind = KnownWords.DeviceKinds.Meant(profile.Kind.Value) is { } kind ? new DeviceKind(kind) : profile.Kind,
            PortGroups = profile.PortGroups.Select(AsMeant).ToValueList(),
        };

    private static PortGroup AsMeant(PortGroup group) =>
        group with
        {
            Connector = group.Connector is { } connector && Connectors(group).Meant(connector.Value) is { } plug ? new Connector(plug) : group.Connector,
            Level = group.Level is { } level && KnownWords.Levels.Meant(level.Value) is { } meant ? new SignalLevel(meant) : group.Level,
        };

    private static KnownWords Connectors(PortGroup group) => group.Kind == PortKind.Output ? KnownWords.OutputConnectors : KnownWords.InputConnectors;

    private static void AddProfile(List<DoubtfulWord> found, Rig rig, DeviceNode device)
    {
        var profile = device.Profile;
        var index = -1;
        for (var i = 0; index < 0 && i < rig.Profiles.Count; i++)
        {
            index = rig.Profiles[i].Id == profile.Id ? i : -1;
        }

        Word(KnownWords.DeviceKinds, "kind", profile.Kind.Value, null, -1);
        for (var i = 0; i < profile.PortGroups.Count; i++)
        {
            var group = profile.PortGroups[i];
            Word(Connectors(group), "connector", group.Connector?.Value, group, i);
            Word(KnownWords.Levels, "level", group.Level?.Value, group, i);
        }

        void Word(KnownWords known, string what, string? word, PortGroup? group, int at)
        {
            if (word is null || known.Meant(word) is not { } meant)
            {
                return;
            }

            found.Add(
                new DoubtfulWord
                {
                    What = what,
                    Word = word,
                    Meant = meant,
                    Owner = group is null ? $"profile {profile.Id}" : $"port group {group.Id} in profile {profile.Id}",
                    Of = Entity.Of("profile", group is null ? profile.Id.Value : $"{profile.Id}/{group.Id}"),
                    Pointer =
                        index < 0 ? $"/rig/devices/{device.Index}/profile"
                        : group is null ? $"/rig/profiles/{index}/{what}"
                        : $"/rig/profiles/{index}/portGroups/{at}/{what}",
                }
            );
        }
    }

    private static void Add(List<DoubtfulWord> found, KnownWords known, string what, string? word, string kind, string id, string list, int index)
    {
        if (word is not null && known.Meant(word) is { } meant)
        {
            found.Add(
                new DoubtfulWord
                {
                    What = what,
                    Word = word,
                    Meant = meant,
                    Owner = $"{kind} {id}",
                    Of = Entity.Of(kind, id),
                    Pointer = $"{list}/{index}/{what}",
                }
            );
        }
    }
}
