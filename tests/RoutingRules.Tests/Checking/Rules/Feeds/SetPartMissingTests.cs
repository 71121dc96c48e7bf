using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class SetPartMissingTests
{
    private static readonly SetPartMissing Rule = new();

    private static Show Parts(params string?[] parts) =>
        Of(("desk", SmallProfiles.Console)) with
        {
            Feeds = parts
                .Select((part, index) => Feed($"f{index}", FeedRole.Main, $"desk/aux/{index + 1}", "desk/out/1") with { Set = "main", Part = part })
                .ToValueList(),
        };

    [Fact]
    public void A_left_part_alone_is_noted() =>
        Expect.One(Rule, Parts("centre", "left"), Severity.Note, "/feeds/1/part", "Set 'main' has a left part and no right part.", "set=main", "missing=right");

    [Fact]
    public void A_right_part_alone_is_noted() =>
        Expect.One(Rule, Parts("right"), Severity.Note, "/feeds/0/part", "Set 'main' has a right part and no left part.", "set=main", "missing=left");

    [Fact]
    public void Both_sides_no_side_and_capitals_are_fine()
    {
        Expect.None(Rule, Parts("left", "right", "low"));
        Expect.None(Rule, Parts("Left", "RIGHT"));
        Expect.None(Rule, Parts("low", null));
    }
}
