using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Lines;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Documents;

public sealed class NameDoubledTests
{
    private static readonly NameDoubled Rule = new();

    private static Feed Mix(string id, string? name) => FeedTo(id, FeedRole.Monitor, "desk/aux/1", "box") with { Name = name };

    private static Show Show(params Feed[] feeds) => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with { Feeds = feeds.ToValueList() };

    [Fact]
    public void Two_feeds_of_one_name_are_noted() =>
        Expect.One(
            Rule,
            Show(Mix("b", "Drum fill"), Mix("a", "drum FILL"), Mix("c", "Side fill")),
            Severity.Note,
            "/feeds/1/name",
            "2 feeds have the name 'drum FILL': a and b.",
            "feed=a",
            "feed=b"
        );

    [Fact]
    public void Two_lines_of_one_name_are_noted()
    {
        var vox = Line("v1", "box/in/1", "desk/channel/1") with { Name = "Vox" };

        Assert.Equal(
            "2 lines have the name 'Vox': v1 and v2.",
            Assert.Single(RuleTester.Findings(Rule, LineRig.Show(vox, vox with { Id = new("v2") }))).Message
        );
    }

    [Fact]
    public void Parts_of_a_set_backups_and_things_without_a_name_may_share_it()
    {
        var left = Mix("l", "Main") with { Set = "main", Part = "left" };

        Expect.None(Rule, Show(left, left with { Id = new("r"), Part = "right" }));
        Expect.None(Rule, Show(Mix("a", "Main"), Mix("b", "Main") with { BackupOf = new("a") }));
        Expect.None(Rule, Show(Mix("a", null), Mix("b", null), Mix("c", " "), Mix("d", "  ")));
        Assert.Single(RuleTester.Findings(Rule, Show(left, left with { Id = new("again") })));
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
