using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Hearing;
using RoutingRules.Checking.Rules.Words;
using RoutingRules.Documents;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Profiles.Generic;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Labels;
using RoutingRules.Tests.Checking.Rules.Networks;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Words;

public sealed class WordDoubtfulTests
{
    private static readonly WordDoubtful Rule = new();

    private static Show Mix(string role, bool? limiter = null) =>
        LabelRig.Show() with
        {
            Feeds = [Feed("ears", new FeedRole(role), "desk/aux/1", "box/out/1") with { Limiter = limiter }],
        };

    [Fact]
    public void A_role_that_is_another_name_of_a_known_one_is_a_warning_at_its_place() =>
        Expect.One(
            Rule,
            Mix("iem"),
            Severity.Warning,
            "/feeds/0/role",
            "The role 'iem' of feed ears is no word the rules know. Did you mean 'in-ear'?",
            "feed=ears",
            "role=iem"
        );

    [Fact]
    public void Words_of_their_own_and_known_ones_are_fine()
    {
        Expect.None(Rule, Mix("in-ear"));
        Expect.None(Rule, Mix("lobby"));
    }

    [Fact]
    public void A_part_is_told_as_the_audience_sees_it()
    {
        var show = Mix("main") with { Feeds = [Mix("main").Feeds[0] with { Set = "pa", Part = "stage left" }] };

        Assert.Equal(
            "The part 'stage left' of feed ears is no word the rules know. Did you mean 'right'? Parts are left and right as the audience sees them.",
            Assert.Single(RuleTester.Findings(Rule, show)).Message
        );
    }

    [Fact]
    public void Networks_links_and_profiles_are_looked_at_each_once()
    {
        var show = Of(("a", SmallProfiles.Box), ("b", SmallProfiles.Box))
            .WithProfile(
                "a",
                profile =>
                    profile with
                    {
                        Kind = new("stagebox"),
                        PortGroups =
                        [
                            .. profile.PortGroups.Select(group =>
                                group.Id.Value == "out" ? group with { Level = new("lines"), Connector = new("xlr") } : group
                            ),
                        ],
                    }
            );
        show = show with
        {
            Rig = show.Rig with
            {
                Networks = [show.Rig.Networks[0] with { Transport = new("avb") }],
                Links =
                [
                    new()
                    {
                        Id = new("l"),
                        Network = new("net"),
                        From = At("a/net/1"),
                        To = At("b/net/1"),
                        Medium = new("utp"),
                    },
                ],
                Devices = [.. show.Rig.Devices.Select(device => device with { Profile = show.Rig.Profiles[^1].Id })],
            },
        };
        var profile = show.Rig.Profiles.Count - 1;

        Assert.Equal(
            [
                ("/rig/links/0/medium", "copper-stranded"),
                ("/rig/networks/0/transport", "avtp-class-a"),
                ($"/rig/profiles/{profile}/kind", "stage-box"),
                ($"/rig/profiles/{profile}/portGroups/1/connector", "xlr-pins"),
                ($"/rig/profiles/{profile}/portGroups/1/level", "line"),
            ],
            RuleTester
                .Findings(Rule, show)
                .Select(finding => (finding.Pointer, finding.Message.Split('\'')[^2]))
                .OrderBy(pair => pair.Pointer, StringComparer.Ordinal)
        );
    }

    [Fact]
    public void What_rests_on_the_word_is_undecided_and_not_passed()
    {
        var result = RuleTester.Run(new InEarLimiterMissing(), Mix("iem"));
        var open = Assert.Single(result.Undecided);

        Assert.Empty(result.Findings);
        Assert.Equal(RuleStatus.Undecided, Assert.Single(result.Rules).Status);
        Assert.Equal(("RR9001", "feed ears", false), (open.Rule, open.Subject, open.IsFault));
        Assert.StartsWith("The role 'iem' is no word the rules know. Read as 'in-ear', it would find: ", open.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_found_or_passed_whichever_word_is_meant_stays_so()
    {
        Assert.Empty(RuleTester.Run(new InEarLimiterMissing(), Mix("iem", limiter: true)).Undecided);
        Assert.Empty(RuleTester.Run(new InEarLimiterMissing(), Mix("lobby")).Undecided);
        var lost = RuleTester.Run(new FeedNotDelivered(), Mix("iem") with { Patch = new() });
        Assert.Single(lost.Findings);
        Assert.Empty(lost.Undecided);
    }

    [Fact]
    public void Two_words_are_read_together_because_one_set_holds_both()
    {
        var zones = new Zone[]
        {
            new() { Id = new("hl"), Side = ZoneSide.HouseLeft },
            new() { Id = new("hr"), Side = ZoneSide.HouseRight },
        };
        var show = Of(("desk", SmallProfiles.Console), ("boxl", SmallProfiles.Box), ("boxr", SmallProfiles.Box))
            .With(Stream("s", "desk/transmit/1-4", "boxl/receive/1-4", "boxr/receive/1-4"))
            .With(Route("desk/main/1-2", "desk/transmit/1-2"));
        show = show with
        {
            Rig = show.Rig with
            {
                Zones = [.. zones],
                Devices = [show.Rig.Devices[0], show.Rig.Devices[1] with { Zone = new("hl") }, show.Rig.Devices[2] with { Zone = new("hr") }],
            },
            Feeds =
            [
                Feed("l", FeedRole.Main, "desk/main/1", "boxr/out/1") with
                {
                    Set = "pa",
                    Part = "L",
                },
                Feed("r", FeedRole.Main, "desk/main/2", "boxl/out/2") with
                {
                    Set = "pa",
                    Part = "R",
                },
            ],
        };

        var open = Assert.Single(RuleTester.Run(new SideMismatch(), show).Undecided);
        Assert.Contains("Read as 'left', and the part 'R' of feed r as 'right', it would find: ", open.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_that_ships_holds_a_doubtful_word()
    {
        var engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();
        var all = new Show
        {
            Title = "All",
            Rig = new() { Devices = [.. engine.Profiles.Ids.Select((id, i) => new Device { Id = new($"d{i}"), Profile = id })] },
        };

        Assert.Empty(engine.Check(all).Findings.Where(finding => finding.Rule == "RR1109").Select(finding => finding.Message));
        Assert.True(all.Rig.Devices.Count > 10);
    }

    [Fact]
    public void The_word_that_is_meant_is_offered_but_never_safe()
    {
        var show = Mix("iem", limiter: true);
        var resolved = Promise.Resolve(show);
        var finding = Promise.Engine.Check(resolved).Findings.Single(finding => finding.Rule == "RR1109");
        var fix = Assert.Single(Promise.Engine.OfferFixes(resolved, Promise.Engine.Check(resolved), finding));

        Assert.Equal(("Write 'in-ear' for the role 'iem' of feed ears", FixSafety.Unsafe), (fix.Title, fix.Safety));
        Assert.Equal(FeedRole.InEar, fix.Edits[0].Apply(show)!.Feeds[0].Role);
        Assert.NotNull(fix.Caution);
    }

    [Fact]
    public void A_role_that_is_no_word_at_all_is_refused_with_the_known_one()
    {
        var read = ShowReader.Read(
            """{ "schemaVersion": 1, "title": "T", "rig": {}, "feeds": [ { "id": "f", "role": "Main", "source": "a/b/1", "to": [ { "at": "a/c/1" } ] } ] }"""u8
        );

        Assert.Contains(
            read.Findings,
            finding => finding.Pointer == "/feeds/0/role" && finding.Message.Contains("did you mean main?", StringComparison.Ordinal)
        );
    }
}
