using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Signal.Existing;
using RoutingRules.Signal.Graph;
using RoutingRules.Signal.Profiles;

namespace RoutingRules.Signal;

/// <summary>Turns a show into devices, a signal graph and demands.</summary>
public static class ShowResolver
{
    private static readonly DeviceProfile NoProfile = new()
    {
        Id = new("none"),
        Kind = new("unknown"),
        Name = "Unknown",
    };

    /// <summary>Resolves a show. Never fails: what does not resolve is marked.</summary>
    /// <param name="show">The show.</param>
    /// <param name="profiles">Profiles for the devices that the show does not describe itself.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static ResolvedShow Resolve(Show show, ProfileLibrary profiles)
    {
        ArgumentNullException.ThrowIfNull(show);
        ArgumentNullException.ThrowIfNull(profiles);
        var (devices, deviceIndex, pointCount) = Devices(show.Rig, profiles);
        var builder = new GraphBuilder(devices, deviceIndex, pointCount);
        builder.CopyProfiles();
        var routes = builder.AddRoutes(show.Patch.Routes);
        var streams = builder.AddStreams(show.Patch.Streams);
        var cables = builder.AddCables(show.Rig.Cables);
        var links = builder.AddLinks(show.Rig.Links, show.Rig.Networks);
        var graph = builder.Build();
        var network = NetworkMapBuilder.Build(show.Rig.Networks, devices, links);
        var (feeds, lines, demands) = new DemandBuilder(show, devices, graph, cables).Build();
        var marks = Marks(show.Rig, graph);
        ExistingPlacements.Find(demands, graph, marks);
        return new ResolvedShow
        {
            Document = show,
            Devices = devices,
            Graph = graph,
            Routes = routes,
            Streams = streams,
            Cables = cables,
            Links = links,
            Feeds = feeds,
            Lines = lines,
            Demands = demands,
            Conflicts = builder.Conflicts,
            IdleRoutes = builder.IdleRoutes,
            Network = network,
            Marks = marks,
        };
    }

    private static (DeviceNode[] Devices, Dictionary<string, int> Index, int PointCount) Devices(Rig rig, ProfileLibrary profiles)
    {
        var devices = new DeviceNode[rig.Devices.Count];
        var index = new Dictionary<string, int>(devices.Length, StringComparer.Ordinal);
        for (var i = 0; i < devices.Length; i++)
        {
            index.TryAdd(rig.Devices[i].Id.Value, i);
        }

        var zones = new Dictionary<Id<Zone>, Zone>(rig.Zones.Count);
        foreach (var zone in rig.Zones)
        {
            zones.TryAdd(zone.Id, zone);
        }

        var rates = new SampleRates(rig, index);
        var own = new Dictionary<(Id<DeviceProfile> Id, int Rate), CompiledProfile>();
        var pointCount = 0;
        for (var i = 0; i < devices.Length; i++)
        {
            var model = rig.Devices[i];
            var rate = rates.Of(model.Id);
            var type = Compiled(rig, profiles, own, model.Profile, rate);
            var state =
                type is null ? (profiles.Find(model.Profile) is null ? ProfileState.Unknown : ProfileState.Unreadable)
                : pointCount + type.PointCount > MaxPoints ? ProfileState.RigFull
                : ProfileState.Found;
            type = state == ProfileState.Found ? type! : ProfileCompiler.Compile(NoProfile, rate);
            devices[i] = new DeviceNode(model, i, type, rate, pointCount, model.Zone is { } id ? zones.GetValueOrDefault(id) : null) { ProfileState = state };
            pointCount += type.PointCount;
        }

        return (devices, index, pointCount);
    }

    /// <summary>The most points a rig may have; devices beyond it count as having no points.</summary>
    public const int MaxPoints = 4_000_000;

    private static CompiledProfile? Compiled(
        Rig rig,
        ProfileLibrary profiles,
        Dictionary<(Id<DeviceProfile> Id, int Rate), CompiledProfile> own,
        Id<DeviceProfile> id,
        int rate
    )
    {
        foreach (var profile in rig.Profiles)
        {
            if (profile.Id == id)
            {
                return own.TryGetValue((id, rate), out var known) ? known : own[(id, rate)] = ProfileCompiler.Compile(profile, rate);
            }
        }

        return profiles.Compiled(id, rate);
    }

    private static MarkedPoint[] Marks(Rig rig, SignalGraph graph)
    {
        if (rig.Unavailable.IsEmpty && rig.Reserved.IsEmpty)
        {
            return [];
        }

        var marks = new List<MarkedPoint>();
        for (var i = 0; i < rig.Unavailable.Count; i++)
        {
            Add(rig.Unavailable[i].At, true, i, rig.Unavailable[i].Reason);
        }

        for (var i = 0; i < rig.Reserved.Count; i++)
        {
            Add(rig.Reserved[i].At, false, i, rig.Reserved[i].Reason);
        }

        return [.. marks];

        void Add(PointRange at, bool isDead, int index, string? reason)
        {
            if (graph.Find(at, out var first) == ConnectionState.Connected)
            {
                marks.Add(
                    new MarkedPoint
                    {
                        First = first,
                        Width = at.Width,
                        IsDead = isDead,
                        Index = index,
                        Reason = reason,
                    }
                );
            }
        }
    }
}
