using RoutingRules.Rules;

namespace RoutingRules.Tests.Documents;

/// <summary>Members that exclude each other, lists with bad entries, and several problems at once.</summary>
public sealed class BadStructureTests
{
    [Theory]
    [InlineData("""{"at":"a/b/1","devices":["x"]}""", "only one of these may be there: \"at\", or \"devices\" and \"zones\"")]
    [InlineData("""{"at":"a/b/1","zones":["x"],"devices":["y"]}""", "only one of these may be there: \"at\", or \"devices\" and \"zones\"")]
    [InlineData("{}", "one of these must be there: \"at\", or \"devices\" and \"zones\"")]
    public void A_destination_is_either_pinned_or_open(string destination, string message)
    {
        var finding = Sample.OneFinding(Sample.WithFeeds($$"""[{"id":"f","role":"main","source":"a/b/1","to":[{"at":"c/d/1"},{{destination}}]}]"""));

        Assert.Equal(("RR1008", "/feeds/0/to/1"), (finding.Rule, finding.Pointer));
        Assert.Equal($"Feed 1 (f), destination 2: {message}.", finding.Message);
    }

    [Theory]
    [InlineData("""{"at":["a/b/1"]}""", true)]
    [InlineData("""{"source":"a/b/1"}""", true)]
    [InlineData("""{"devices":["x"],"zones":["y"]}""", true)]
    [InlineData("""{"at":["a/b/1"],"source":"a/b/1"}""", false)]
    [InlineData("""{"source":"a/b/1","zones":["x"]}""", false)]
    [InlineData("{}", false)]
    public void A_line_enters_in_exactly_one_way(string origin, bool good)
    {
        var read = Sample.Read(Sample.WithLines($$"""[{"id":"l","kind":"line","from":{{origin}},"to":["c/d/1"]}]"""));

        Assert.Equal(good ? [] : ["RR1008"], read.Findings.Select(finding => finding.Rule));
    }

    [Fact]
    public void A_bad_member_of_a_choice_is_one_finding_and_not_two()
    {
        var finding = Sample.OneFinding(Sample.WithFeeds("""[{"id":"f","role":"main","source":"a/b/1","to":[{"at":"c/d"}]}]"""));

        Assert.Equal("RR1007", finding.Rule);
    }

    [Theory]
    [InlineData("[]", "RR1006", "/feeds/0/to")]
    [InlineData("""[{"devices":[]}]""", "RR1006", "/feeds/0/to/0/devices")]
    [InlineData("""{"at":"c/d/1"}""", "RR1005", "/feeds/0/to")]
    [InlineData("""["c/d/1"]""", "RR1005", "/feeds/0/to/0")]
    public void A_feed_goes_to_a_filled_list_of_objects(string to, string rule, string pointer)
    {
        var finding = Sample.OneFinding(Sample.WithFeeds($$"""[{"id":"f","role":"main","source":"a/b/1","to":{{to}}}]"""));

        Assert.Equal((rule, pointer), (finding.Rule, finding.Pointer));
    }

    [Fact]
    public void A_route_must_say_from_even_if_it_is_null()
    {
        Assert.Null(Sample.Good(Sample.WithPatch("""{"routes":[{"from":null,"to":"a/b/1"}]}""")).Patch.Routes[0].From);
        Assert.Equal(("RR1004", "/patch/routes/0/from"), Of(Sample.OneFinding(Sample.WithPatch("""{"routes":[{"to":"a/b/1"}]}"""))));
        Assert.Equal(("RR1005", "/patch/routes/0/to"), Of(Sample.OneFinding(Sample.WithPatch("""{"routes":[{"from":null,"to":null}]}"""))));

        static (string, string) Of(Finding finding) => (finding.Rule, finding.Pointer);
    }

    [Fact]
    public void Entries_of_a_list_of_texts_are_counted_from_1()
    {
        var finding = Sample.OneFinding(Sample.WithRig("""{"zones":[{"id":"a","near":["b",7]}]}"""));

        Assert.Equal("/rig/zones/0/near/1", finding.Pointer);
        Assert.Equal("Zone 1 (a), \"near\" entry 2: an id belongs here, not the number 7.", finding.Message);
        Assert.Equal("Write the value in quotation marks.", finding.Remedy);
    }

    [Fact]
    public void Bad_entries_are_left_out_and_good_ones_kept()
    {
        var read = Sample.Read(Sample.WithRig("""{"zones":[{"id":"a"},{"id":7},5,{"id":"b"}]}"""));

        Assert.Equal(["a", "b"], read.Value!.Rig.Zones.Select(zone => zone.Id.Value));
        Assert.Equal(["/rig/zones/1/id", "/rig/zones/2"], read.Findings.Select(finding => finding.Pointer));
        Assert.False(read.IsUsable);
    }

    [Fact]
    public void Every_problem_is_reported_in_document_order()
    {
        var read = Sample.Read(
            """
            {
              "title": 5, "colour": 1,
              "rig": { "clocks": [ { "id": "c", "sampleRate": "x" } ], "zones": null },
              "feeds": 3,
              "schemaVersion": 1
            }
            """
        );

        Assert.Equal(
            ["/title", "/colour", "/rig/clocks/0/leader", "/rig/clocks/0/sampleRate", "/rig/zones", "/feeds"],
            read.Findings.Select(finding => finding.Pointer)
        );
        Assert.Equal([2, 2, 3, 3, 3, 4], read.Findings.Select(finding => finding.Line!.Value));
    }

    [Theory]
    [InlineData("5")]
    [InlineData("\"x\"")]
    [InlineData("[]")]
    [InlineData("null")]
    public void Extensions_hold_an_object(string value)
    {
        Assert.Equal("RR1005", Sample.OneFinding($$"""{"schemaVersion":1,"title":"t","rig":{},"extensions":{{value}}}""").Rule);
    }
}
