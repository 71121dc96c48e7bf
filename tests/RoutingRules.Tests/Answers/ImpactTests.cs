using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.Answers;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Answers;

/// <summary>Losses of a rig that fits on a hand: a console, two boxes in a row behind it, an amplifier on the first box.</summary>
public sealed class ImpactTests
{
    private static readonly Show Rig = Make();

    private static Show Make()
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.FreeBox), ("b", SmallProfiles.FreeBox), ("amp", SmallProfiles.Amplifier));
        return (
            show with
            {
                Rig = show.Rig with
                {
                    Clocks =
                    [
                        new()
                        {
                            Id = new("c"),
                            SampleRate = 48000,
                            Leader = new("desk"),
                        },
                    ],
                    Links = [Link("trunk", "desk/net/1", "a/net/1"), Link("cross", "a/net/2", "b/net/1")],
                    Cables = [Cable("a/out/1", "amp/in/1") with { Way = "loom 1" }, Cable("a/out/2", "amp/in/2") with { Way = "loom 2" }],
                    Devices = show.Rig.Devices.Select(device => device with { Power = device.Id.Value is "a" or "amp" ? [new("stage")] : [] }).ToValueList(),
                },
                Feeds =
                [
                    Feed("main", FeedRole.Main, "desk/main/1", "amp/in/1") with
                    {
                        Priority = Priority.Critical,
                    },
                    Feed("spare", FeedRole.Fill, "desk/main/1", "b/out/1") with
                    {
                        BackupOf = new Id<Feed>("main"),
                    },
                    Feed("ears", FeedRole.InEar, "desk/aux/1", "a/out/3") with
                    {
                        Person = "singer",
                        Limiter = true,
                    },
                    Feed("wedges", FeedRole.Monitor, "desk/aux/2", "a/out/4", "b/out/4"),
                ],
                Lines = [Line("voice", "a/in/1", "desk/channel/1") with { Phantom = PhantomNeed.Required }],
            }
        ).With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4", "b/receive/1-4"), Stream("s2", "a/transmit/1-4", "desk/receive/1-4")).With(Route("desk/main/1", "desk/transmit/1"), Route("desk/aux/1", "desk/transmit/3"), Route("desk/aux/2", "desk/transmit/4"), Route(null, "desk/transmit/2"), Route("a/receive/1", "a/out/1"), Route("a/receive/3-4", "a/out/3-4"), Route("b/receive/1", "b/out/1"), Route("b/receive/4", "b/out/4"), Route("a/in/1", "a/transmit/1"), Route("desk/receive/1", "desk/channel/1"));
    }

    private static Link Link(string id, string from, string to) =>
        new()
        {
            Id = new(id),
            Network = new("net"),
            From = At(from),
            To = At(to),
        };

    private static ImpactAnswer Ask(Show show, ImpactOptions? options = null) => Promise.Engine.Impact(show, options);

    private static LossImpact Loss(ImpactAnswer answer, string id) => Assert.Single(answer.Losses, loss => loss.Lost[0].Id == id);

    private static string Told(LossImpact loss) =>
        string.Join("; ", loss.Subjects.Select(subject => $"{subject.Subject} {subject.Fate} {string.Join(' ', subject.LostAt)}"));

    [Theory]
    [InlineData("desk", "ears Lost a/out/3; main Lost amp/in/1; wedges Lost a/out/4 b/out/4; spare Lost b/out/1; voice Lost desk/channel/1")]
    [InlineData("trunk", "ears Lost a/out/3; main Lost amp/in/1; wedges Lost a/out/4 b/out/4; spare Lost b/out/1; voice Lost desk/channel/1")]
    [InlineData("a", "ears Lost a/out/3; main Lost amp/in/1; wedges Lost a/out/4 b/out/4; spare Lost b/out/1; voice Lost desk/channel/1")]
    [InlineData("b", "wedges Partly b/out/4; spare Lost b/out/1")]
    [InlineData("cross", "wedges Partly b/out/4; spare Lost b/out/1")]
    [InlineData("amp", "main BackedUp amp/in/1")]
    [InlineData("a/out/1 to amp/in/1", "main BackedUp amp/in/1")]
    [InlineData("a/out/2 to amp/in/2", "")]
    [InlineData("loom at a", "main BackedUp amp/in/1")]
    [InlineData("stage", "ears Lost a/out/3; main Lost amp/in/1; wedges Lost a/out/4 b/out/4; spare Lost b/out/1; voice Lost desk/channel/1")]
    public void Each_loss_silences_what_a_person_would_say(string id, string told)
    {
        var loss = Loss(Ask(Rig, new ImpactOptions { Recovery = false }), id);

        // Of feeds with the same role and priority the first in the document comes first.
        Assert.Equal(told.Split("; ").Order(StringComparer.Ordinal), Told(loss).Split("; ").Order(StringComparer.Ordinal));
        Assert.True(!told.Contains("ears", StringComparison.Ordinal) || loss.Subjects[0].Subject == "ears");
        Assert.Equal(told.Contains("ears Lost", StringComparison.Ordinal), loss.IsSinglePoint);
    }

    [Fact]
    public void The_worst_comes_first_and_what_carries_on_is_counted()
    {
        var answer = Ask(Rig, new ImpactOptions { Recovery = false });

        Assert.Equal(["a", "desk", "stage", "trunk"], answer.Losses.Take(4).Select(loss => loss.Lost[0].Id).Order(StringComparer.Ordinal));
        Assert.Equal((2, 1), (Loss(answer, "b").FeedsKept, Loss(answer, "b").LinesKept));
        Assert.Equal(["spare"], Loss(answer, "amp").Subjects[0].Backups);
        Assert.Contains(Loss(answer, "desk").Remarks, remark => remark.Contains("nothing in the document takes over", StringComparison.Ordinal));
        Assert.Contains("a and amp go with it: they have no other supply.", Loss(answer, "stage").Remarks);
    }

    [Fact]
    public void Sets_name_each_thing_that_silences_a_feed_and_its_backup()
    {
        var main = Ask(Rig, new ImpactOptions { Recovery = false }).FailureSets[0];

        Assert.Equal("main", main.Feed);
        Assert.Equal(1, main.Smallest);
        Assert.Equal(["desk", "a", "trunk", "stage"], main.Sets.Where(set => set.Count == 1).Select(set => set[0].Id));

        // The main by box, cable, loom or amplifier, its spare by box or link: every other pair holds one of the four above.
        Assert.Equal(
            ["b+amp", "b+a/out/1 to amp/in/1", "b+loom at a", "amp+cross", "cross+a/out/1 to amp/in/1", "cross+loom at a"],
            main.Sets.Where(set => set.Count == 2).Select(set => string.Join('+', set.Select(thing => thing.Id)))
        );
    }

    [Fact]
    public void Pairs_silence_what_neither_does_alone()
    {
        var pairs = Ask(
            Rig,
            new ImpactOptions
            {
                Recovery = false,
                Pairs = true,
                SetSize = 0,
                Kinds = [LossKind.Device],
            }
        ).Pairs;

        var pair = Assert.Single(pairs);
        Assert.Equal(["b", "amp"], pair.Lost.Select(thing => thing.Id));
        Assert.Equal(LossFate.Lost, pair.Subjects[0].Fate);
    }

    [Fact]
    public void A_ring_carries_on_over_its_other_side()
    {
        var ring = Rig with { Rig = Rig.Rig with { Links = Rig.Rig.Links.Append(Link("ring", "desk/net/2", "b/net/2")).ToValueList() } };
        var trunk = Loss(Ask(ring, new ImpactOptions { Recovery = false }), "trunk");

        Assert.Empty(trunk.Subjects);
        Assert.Equal(["s1", "s2"], trunk.Rerouted);
        Assert.Contains(trunk.Remarks, remark => remark.Contains("no loop control", StringComparison.Ordinal));
    }

    [Fact]
    public void A_plan_moves_what_was_at_the_box_to_the_other_one_and_the_cable_with_it()
    {
        var ring = Rig with { Rig = Rig.Rig with { Links = Rig.Rig.Links.Append(Link("ring", "desk/net/2", "b/net/2")).ToValueList() } };
        var plan = Loss(Ask(ring), "a").Plan!;

        Assert.Empty(plan.Unrecovered);
        Assert.Equal(["ears/1", "main/1", "wedges/1", "voice"], plan.Recovered.Select(recovered => recovered.Demand));
        Assert.All(plan.Recovered, recovered => Assert.Equal("b", recovered.To.Device.Value));
        Assert.Equal(4, plan.Moves);
        Assert.Equal(["amp/in/1"], Assert.Single(plan.Steps, step => step.Demand == "main/1").CableTo.Select(point => point.ToString()));
        Assert.All(plan.Steps.Where(step => step.Kind == FallbackStepKind.Replug), step => Assert.True(step.IsElsewhere));

        // Carried out on the document, without the box.
        var after = Promise.Resolve(RemovalOracle.Without(plan.Apply(ring), [new LostThing { Kind = LossKind.Device, Id = "a" }]));
        Assert.Equal("desk/main/1", RemovalOracle.Source(after, after, At("amp/in/1")[0]).ToString());
        Assert.Equal("desk/main/1", RemovalOracle.Source(after, after, At("b/out/1")[0]).ToString());
        Assert.Equal("desk/aux/2", RemovalOracle.Source(after, after, At("b/out/4")[0]).ToString());
        Assert.Equal("desk/aux/1", RemovalOracle.Source(after, after, plan.Recovered[0].To[0]).ToString());
        Assert.Equal(plan.Recovered[3].To.ToString(), RemovalOracle.Source(after, after, At("desk/channel/1")[0]).ToString());
    }

    private static Show Ring => Rig with { Rig = Rig.Rig with { Links = Rig.Rig.Links.Append(Link("ring", "desk/net/2", "b/net/2")).ToValueList() } };

    private static LossImpact Pair(ImpactAnswer answer, string one, string other) =>
        Assert.Single(answer.Pairs, pair => pair.Lost[0].Id == one && pair.Lost[1].Id == other);

    [Fact]
    public void A_pair_has_a_plan_that_holds_under_both_losses()
    {
        var pair = Pair(
            Ask(
                Ring,
                new ImpactOptions
                {
                    Pairs = true,
                    SetSize = 0,
                    Kinds = [LossKind.Device],
                }
            ),
            "b",
            "amp"
        );
        var plan = pair.Plan!;

        // The amplifier takes main with it; its spare and the second wedge go to the box that is left.
        Assert.Equal(["spare/1", "wedges/2"], plan.Recovered.Select(recovered => recovered.Demand));
        Assert.All(plan.Recovered, recovered => Assert.Equal("a", recovered.To.Device.Value));
        Assert.Equal("main/1", Assert.Single(plan.Unrecovered).Demand);
        Assert.Contains("is lost", plan.Unrecovered[0].Reason, StringComparison.Ordinal);
        var after = Promise.Resolve(RemovalOracle.Without(plan.Apply(Ring), pair.Lost));
        Assert.Equal("desk/main/1", RemovalOracle.Source(after, after, plan.Recovered[0].To[0]).ToString());
        Assert.Equal("desk/aux/2", RemovalOracle.Source(after, after, plan.Recovered[1].To[0]).ToString());
        Assert.Equal("desk/aux/1", RemovalOracle.Source(after, after, At("a/out/3")[0]).ToString());
        Assert.Equal("a/in/1", RemovalOracle.Source(after, after, At("desk/channel/1")[0]).ToString());
    }

    [Fact]
    public void A_cable_that_is_one_of_a_pair_is_not_plugged_anywhere()
    {
        var plan = Pair(
            Ask(
                Ring,
                new ImpactOptions
                {
                    Pairs = true,
                    SetSize = 0,
                    Kinds = [LossKind.Device, LossKind.Cable],
                }
            ),
            "b",
            "a/out/1 to amp/in/1"
        ).Plan!;

        Assert.Contains(plan.Recovered, recovered => recovered.Demand == "spare/1");
        Assert.Contains(plan.Unrecovered, entry => entry is { Demand: "main/1", Reason: "The cable to amp/in/1 is lost." });
        Assert.DoesNotContain(plan.Steps, step => step.CableTo.Contains(At("amp/in/1")[0]));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 1)]
    [InlineData(8, 2)]
    public void A_plan_for_a_pair_keeps_to_the_moves_of_one_loss(int moves, int used) =>
        Assert.Equal(
            used,
            Pair(
                Ask(
                    Ring,
                    new ImpactOptions
                    {
                        Pairs = true,
                        SetSize = 0,
                        Moves = moves,
                        Kinds = [LossKind.Device],
                    }
                ),
                "b",
                "amp"
            ).Plan!.Moves
        );

    [Fact]
    public void Without_recovery_pairs_have_no_plan_either() =>
        Assert.All(
            Ask(
                Ring,
                new ImpactOptions
                {
                    Pairs = true,
                    Recovery = false,
                    SetSize = 0,
                }
            ).Pairs,
            pair => Assert.Null(pair.Plan)
        );

    [Fact]
    public void Pairs_that_the_same_steps_mend_share_a_card_and_every_plan_is_in_the_json()
    {
        // The console has nothing free, so that nothing can be done about both boxes.
        var ring = Ring with
        {
            Rig = Ring.Rig with
            {
                Reserved = [new() { At = At("desk/out/1-2"), Reason = "guest desk" }, new() { At = At("desk/in/1-2"), Reason = "guest desk" }],
            },
        };
        var answer = Ask(
            ring,
            new ImpactOptions
            {
                Pairs = true,
                SetSize = 0,
                Kinds = [LossKind.Device, LossKind.Cable],
            }
        );
        var text = ImpactReport.Text(answer, ring);
        using var json = new MemoryStream();
        ImpactJson.Write(answer, json);
        using var read = System.Text.Json.JsonDocument.Parse(json.ToArray());

        Assert.Contains("\nIf b and amp fail\n", text, StringComparison.Ordinal);
        Assert.Contains("\nIf b and cable a/out/1 to amp/in/1 fail\n", text, StringComparison.Ordinal);
        Assert.Equal(answer.Pairs.Count, read.RootElement.GetProperty("pairs").EnumerateArray().Count(pair => pair.TryGetProperty("plan", out _)));
        var cards = answer.Pairs.Where(pair => !pair.Plan!.Recovered.IsEmpty).Select(pair => (pair.Subjects, pair.Outputs, pair.Plan)).Distinct().Count();
        Assert.True(cards < answer.Pairs.Count);
        Assert.Equal(
            cards,
            text.Split('\n').Count(line => line.StartsWith("If ", StringComparison.Ordinal) && line.EndsWith(" fail", StringComparison.Ordinal))
        );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    public void A_plan_keeps_to_its_moves_and_takes_the_important_first(int moves)
    {
        var ring = Rig with { Rig = Rig.Rig with { Links = Rig.Rig.Links.Append(Link("ring", "desk/net/2", "b/net/2")).ToValueList() } };
        var plan = Loss(Ask(ring, new ImpactOptions { Moves = moves, SetSize = 0 }), "a").Plan!;

        Assert.Equal(moves, plan.Moves);
        Assert.Equal(new[] { "ears/1", "main/1", "wedges/1" }.Take(moves), plan.Recovered.Select(recovered => recovered.Demand));
        Assert.All(plan.Unrecovered, unrecovered => Assert.Equal("The plan has used all its moves.", unrecovered.Reason));
    }

    /// <summary>A club: the main on the left box, four wedges on the right one, each box with room for four and no more.</summary>
    private static Show Club(string wedgePriority, params Cable[] more)
    {
        var box = SmallProfiles.FreeBox with
        {
            PortGroups = SmallProfiles.FreeBox.PortGroups.Select(group => group.Id.Value == "out" ? group with { Count = 4 } : group).ToValueList(),
        };
        var console = SmallProfiles.Console with
        {
            PortGroups = SmallProfiles
                .Console.PortGroups.Select(group => group.Id.Value == "out" ? group with { Count = more.Length > 0 ? 2 : 1 } : group)
                .ToValueList(),
            FactoryRoutes = [],
        };
        var show = Of(("desk", console), ("left", box), ("right", box), ("amp", SmallProfiles.Amplifier));
        return (
            show with
            {
                Rig = show.Rig with
                {
                    Links = [Link("one", "desk/net/1", "left/net/1"), Link("two", "desk/net/2", "right/net/1")],
                    Cables = [Cable("left/out/1", "amp/in/1"), .. more],
                    Reserved = [new() { At = At("desk/out/1"), Reason = "guest desk" }],
                },
                Feeds =
                [
                    Feed("main", FeedRole.Main, "desk/main/1", "amp/in/1") with
                    {
                        Priority = Priority.Critical,
                    },
                    .. Enumerable
                        .Range(1, 4)
                        .Select(i =>
                            Feed($"wedge-{i}", FeedRole.Monitor, $"desk/aux/{i}", $"right/out/{i}") with
                            {
                                Priority = Enum.Parse<Priority>(wedgePriority),
                            }
                        ),
                ],
            }
        )
            .With(Stream("s1", "desk/transmit/1-4", "right/receive/1-4"), Stream("s2", "desk/transmit/5-8", "left/receive/1-4"))
            .With(
                Route("desk/aux/1-4", "desk/transmit/1-4"),
                Route("desk/main/1", "desk/transmit/5"),
                Route("right/receive/1-4", "right/out/1-4"),
                Route("left/receive/1", "left/out/1")
            );
    }

    [Fact]
    public void A_main_takes_a_free_output_of_the_console_before_it_takes_anybodys_place()
    {
        var show = Club("Normal", Cable("right/out/1", "amp/in/2"));
        var plan = Loss(Ask(show), "left").Plan!;

        Assert.Equal(["main/1: left/out/1 to desk/out/2"], plan.Recovered.Select(recovered => $"{recovered.Demand}: {recovered.From} to {recovered.To}"));
        Assert.True(plan.Displaced.IsEmpty);
        Assert.Equal("desk/main/1", Carried(plan.Apply(show), "amp/in/1"));
    }

    [Fact]
    public void Where_nothing_is_free_a_main_takes_the_place_of_a_wedge_and_the_plan_says_so()
    {
        var show = Club("Normal");
        var plan = Loss(Ask(show), "left").Plan!;

        Assert.Equal(["wedge-4/1 at right/out/4 for main/1"], plan.Displaced.Select(displaced => $"{displaced.Demand} at {displaced.At} for {displaced.By}"));
        Assert.Equal((FallbackStepKind.Pull, "wedge-4/1"), (plan.Steps[0].Kind, plan.Steps[0].Demand));
        Assert.Equal(["main/1"], plan.Recovered.Select(recovered => recovered.Demand));
        Assert.Equal(("desk/main/1", "desk/aux/3"), (Carried(plan.Apply(show), "amp/in/1"), Carried(plan.Apply(show), "right/out/3")));
        Assert.Contains(
            "Falls silent by this plan: wedge-4 gives up right/out/4 for main",
            System.Text.RegularExpressions.Regex.Replace(ImpactReport.Text(Ask(show), show), @"\s+", " "),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_cable_of_what_gives_up_its_place_is_pulled()
    {
        var show = Club("Low");
        show = show with { Rig = show.Rig with { Cables = show.Rig.Cables.Append(Cable("right/out/3-4", "amp/in/3-4")).ToValueList() } };
        var plan = Loss(Ask(show), "left").Plan!;
        var after = plan.Apply(show);

        Assert.Equal(["amp/in/4"], plan.Steps[0].CableTo.Select(point => point.ToString()));
        Assert.Equal(
            ["right/out/3 to amp/in/3", "right/out/4 to amp/in/1"],
            after.Rig.Cables.Where(cable => cable.From.Device.Value == "right").Select(cable => $"{cable.From} to {cable.To}")
        );
        Assert.Equal("desk/main/1", Carried(after, "amp/in/1"));
    }

    [Fact]
    public void Nothing_of_the_same_priority_gives_way_and_the_reason_is_true()
    {
        var plan = Loss(Ask(Club("Critical")), "left").Plan!;

        Assert.True(plan.Displaced.IsEmpty && plan.Recovered.IsEmpty);
        Assert.Equal(
            "Its places are gone, and right and desk have no output free for it, nor one that something less important could give up.",
            Assert.Single(plan.Unrecovered).Reason
        );
    }

    private static string? Carried(Show show, string at)
    {
        var after = Promise.Resolve(RemovalOracle.Without(show, [new LostThing { Kind = LossKind.Device, Id = "left" }]));
        return RemovalOracle.Source(after, after, At(at)[0]).ToString();
    }

    [Fact]
    public void What_has_lost_its_source_is_not_planned_for()
    {
        var plan = Loss(Ask(Rig), "desk").Plan!;

        Assert.Empty(plan.Steps);
        Assert.Empty(plan.Recovered);
        Assert.Contains(plan.Unrecovered, entry => entry is { Demand: "ears/1", Reason: "Its source desk/aux/1 is lost." });
        Assert.Contains(plan.Unrecovered, entry => entry.Demand == "voice" && entry.Sink == At("desk/channel/1"));
    }

    [Fact]
    public void What_does_not_arrive_is_said_and_not_counted()
    {
        var answer = Ask(
            Rig with
            {
                Patch = Rig.Patch with { Routes = Rig.Patch.Routes.Where(route => route.To.ToString() != "desk/transmit/3").ToValueList() },
            },
            new ImpactOptions { Recovery = false }
        );

        Assert.Equal(["ears/1"], answer.NotArriving);
        Assert.DoesNotContain(answer.Losses, loss => loss.Subjects.Any(subject => subject.Subject == "ears"));
    }

    [Fact]
    public void Points_are_looked_at_on_request()
    {
        var answer = Ask(
            Rig,
            new ImpactOptions
            {
                Recovery = false,
                Kinds = [LossKind.Point],
                SetSize = 0,
            }
        );

        Assert.Equal(
            ["a/in/1", "a/out/1", "a/out/3", "a/out/4", "amp/in/1", "amp/out/1", "b/out/1", "b/out/4"],
            answer.Losses.Select(loss => loss.Lost[0].Id).Order(StringComparer.Ordinal)
        );
        Assert.Equal("main BackedUp amp/in/1", Told(Loss(answer, "a/out/1")));
    }

    [Fact]
    public void What_stays_silent_for_one_reason_stands_in_one_row_and_nothing_is_left_out()
    {
        var answer = Ask(Rig, new ImpactOptions { Kinds = [LossKind.Device], SetSize = 0 });
        var plan = Loss(answer, "a").Plan!;
        var rows = System
            .Xml.Linq.XDocument.Parse(ImpactReport.Html(answer, Rig))
            .Descendants("section")
            .Single(section => section.Descendants("h2").Single().Value == "If a fails")
            .Descendants("table")
            .Single(table => table.Descendants("th").First().Value == "Stays silent")
            .Element("tbody")!
            .Elements("tr")
            .ToArray();

        Assert.Equal(plan.Unrecovered.Select(unrecovered => unrecovered.Reason).Distinct(), rows.Select(row => row.Element("td")!.Value));
        Assert.Equal(plan.Unrecovered.Count, rows.Sum(row => row.Element("th")!.Value.Split(';').Length));
    }

    [Theory]
    [InlineData("loom B 1-2", "loom B")]
    [InlineData("loom B 3", "loom B")]
    [InlineData("tower rack", "tower rack")]
    [InlineData("A12", "A12")]
    [InlineData("12", "12")]
    public void A_loom_is_a_way_without_its_numbers(string way, string loom) => Assert.Equal(loom, LossUnitList.LoomOf(way));

    [Theory]
    [InlineData(-1, 2)]
    [InlineData(8, 4)]
    [InlineData(8, -1)]
    public void Options_out_of_range_are_refused(int moves, int size) =>
        Assert.ThrowsAny<ArgumentException>(() => Ask(Rig, new ImpactOptions { Moves = moves, SetSize = size }));

    [Fact]
    public void Reports_carry_cautions_on_every_card_and_escape_names()
    {
        var named = Rig with
        {
            Title = "Ring <script>|*",
            Rig = Rig.Rig with { Links = Rig.Rig.Links.Append(Link("ring", "desk/net/2", "b/net/2")).ToValueList() },
        };
        var answer = Ask(named);
        var text = ImpactReport.Text(answer, named);
        var html = ImpactReport.Html(answer, named);
        var markdown = ImpactReport.Markdown(answer, named);

        // The overview; desk, a, b, amp, cross and ring; the supply that takes box and amplifier with it.
        var cards = text.Split("\nIf ").Length;
        Assert.Equal(cards, text.Split("Never lift a").Length - 1);
        Assert.Equal(cards, html.Split("<section>").Length - 1);
        Assert.Equal(cards, html.Split("Never lift a protective earth").Length - 1);
        Assert.Equal(cards, markdown.Split("Never lift a protective earth").Length - 1);
        Assert.DoesNotContain("<script>", html, StringComparison.Ordinal);
        Assert.Contains("\\<script\\>\\|\\*", markdown, StringComparison.Ordinal);
        System.Xml.Linq.XDocument.Parse(html[html.IndexOf("<html", StringComparison.Ordinal)..]);
        Assert.Contains("Phantom ON once it is plugged, channel muted.", html, StringComparison.Ordinal);
        Assert.Contains("the cable to amp/in/1", html, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', text + html + markdown);
    }
}
