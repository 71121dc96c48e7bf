using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class CriticalSharedTests
{
    private static readonly CriticalShared Rule = new();

    private static Show Two(params string[] devices)
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box))
            .With(Stream("s", "desk/transmit/1-4", "a/receive/1-4"));
        return show with
        {
            Feeds =
            [
                new()
                {
                    Id = new("y"),
                    Source = At("desk/aux/1"),
                    To = [new() { Devices = [new("a")] }],
                    Priority = Priority.Critical,
                },
                new()
                {
                    Id = new("x"),
                    Source = At("desk/aux/2"),
                    To = [new() { Devices = devices.Select(id => new Id<Device>(id)).ToValueList() }],
                    Priority = Priority.Critical,
                },
            ],
        };
    }

    [Fact]
    public void Critical_feeds_on_one_box_where_another_could_take_one_are_reported() =>
        Expect.One(
            Rule,
            Two("a", "b"),
            Severity.Warning,
            "/rig/devices/1",
            "All critical feeds are on 'a': 'x' and 'y'. b/out/1 is free and may take one.",
            "device=a",
            "feed=x",
            "feed=y"
        );

    [Fact]
    public void Feeds_that_may_go_nowhere_else_lone_feeds_and_feeds_apart_are_fine()
    {
        Expect.None(Rule, Two("a"));
        Expect.None(Rule, Two("b").With(Stream("s", "desk/transmit/1-4", "a/receive/1-4", "b/receive/1-4")));
        var lower = Two("a", "b");
        Expect.None(Rule, lower with { Feeds = [lower.Feeds[1]] });
        Expect.None(Rule, lower with { Feeds = [lower.Feeds[0], lower.Feeds[1] with { Priority = Priority.High }] });
    }
}
