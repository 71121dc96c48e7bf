using RoutingRules.Model;
using RoutingRules.Profiles.Generic;
using RoutingRules.Resolving;
using RoutingRules.Testing;
using RoutingRules.Tracing;

namespace RoutingRules.Tests.Tracing;

/// <summary>What traces are tested with.</summary>
internal static class TracerShows
{
    public static readonly RoutingEngine TestEngine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    public static SignalTrace Trace(Show show, string point)
    {
        var resolved = TestEngine.Resolve(show);
        Assert.Equal(ConnectionState.Connected, resolved.Graph.Find(SmallShow.At(point), out var at));
        return RoutingEngine.Trace(resolved, at);
    }

    public static string[] Steps(IEnumerable<TraceHop> hops) => [.. hops.Select(hop => $"{hop.From.At} {hop.Kind} {hop.To.At}")];

    /// <summary>Console with aux 1 in slot 1 of a stream to two boxes; the first box feeds an amplifier by cable.</summary>
    public static Show Club()
    {
        var show = SmallShow
            .Of(("desk", SmallProfiles.Console), ("box-a", SmallProfiles.Box), ("box-b", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier))
            .With(SmallShow.Stream("s1", "desk/transmit/1-4", "box-a/receive/5-8", "box-b/receive/1-4"));
        return show with { Rig = show.Rig with { Cables = [SmallShow.Cable("box-a/out/5", "amp/in/2") with { Way = "loom 5" }] } };
    }
}
