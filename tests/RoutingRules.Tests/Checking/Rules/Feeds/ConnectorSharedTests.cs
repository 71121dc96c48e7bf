using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class ConnectorSharedTests
{
    private static readonly ConnectorShared Rule = new();

    /// <summary>A console whose outputs are two a connector.</summary>
    internal static Show Show(SignalLevel level, params Feed[] feeds)
    {
        var profile = SmallProfiles.Console with
        {
            PortGroups = SmallProfiles
                .Console.PortGroups.Select(group => group.Id.Value == "out" ? group with { ChannelsPerConnector = 2, Level = level } : group)
                .ToValueList(),
        };
        return Of(("desk", profile)).With(Route("desk/aux/1-2", "desk/out/1-2")) with { Feeds = feeds.ToValueList() };
    }

    internal static Feed Aux(int number, FeedRole role) => Feed($"f{number}", role, $"desk/aux/{number}", $"desk/out/{number}");

    [Fact]
    public void A_recording_beside_a_monitor_on_one_connector_is_told() =>
        Expect.One(
            Rule,
            Show(SignalLevel.Aes3, Aux(1, FeedRole.Monitor), Aux(2, FeedRole.Record)),
            Severity.Warning,
            "/rig/devices/0",
            "desk/out/1-2 is one connector and carries 'f1' (monitor) and 'f2' (record).",
            "connector=desk/out/1-2",
            "feed=f1",
            "feed=f2"
        );

    [Fact]
    public void Like_tasks_analogue_looms_and_single_feeds_are_fine()
    {
        Expect.None(Rule, Show(SignalLevel.Aes3, Aux(1, FeedRole.Main), Aux(2, FeedRole.Sub)));
        Expect.None(Rule, Show(SignalLevel.Aes3, Aux(1, FeedRole.Broadcast), Aux(2, FeedRole.Record)));
        Expect.None(Rule, Show(SignalLevel.Line, Aux(1, FeedRole.Monitor), Aux(2, FeedRole.Record)));
        Expect.None(Rule, Show(SignalLevel.Aes3, Aux(1, FeedRole.Monitor)));
    }
}
