using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;

namespace RoutingRules.Schema.Tests;

/// <summary>All that reader and validators see differently, each with its reason; anything else is a fault.</summary>
public sealed class KnownDifferenceTests
{
    // The triples are: reader, NJsonSchema behind the strict parser, JsonSchema.Net.
    [Fact]
    public void A_whole_number_written_with_decimals_is_an_integer_for_newer_drafts_only() =>
        Expect((false, false, true), Show("""{"zones":[{"id":"a","walk":1.0}]}"""));

    [Fact]
    public void A_number_too_small_for_decimals_is_0_for_NJsonSchema() =>
        Expect((true, false, true), Show("""{"links":[{"id":"l","network":"n","from":"a/b/1","to":"c/d/1","lengthMetres":1e-300}]}"""));

    [Fact]
    public void A_range_that_runs_backwards_is_seen_by_the_reader_only() =>
        Expect((false, true, true), Show("""{"cables":[{"from":"a/b/8-1","to":"c/d/1-8"}]}"""));

    [Fact]
    public void A_day_that_is_not_in_the_calendar_is_seen_by_the_reader_only() =>
        Expect((false, true, true), """{"schemaVersion":1,"title":"t","date":"2027-02-30","rig":{}}""");

    [Fact]
    public void The_year_0_is_seen_by_the_reader_only() => Expect((false, true, true), """{"schemaVersion":1,"title":"t","date":"0000-01-01","rig":{}}""");

    [Fact]
    public void A_member_written_twice_is_refused_by_strict_parsers_only() =>
        Expect((false, false, true), """{"schemaVersion":1,"title":"t","title":"t","rig":{}}""");

    [Fact]
    public void A_line_break_at_the_very_end_slips_past_the_dollar_sign_of_regular_expressions_here() =>
        Expect((false, true, true), Show("""{"zones":[{"id":"a\n"}]}"""));

    [Fact]
    public void Half_a_surrogate_pair_is_no_text_for_the_reader() =>
        Assert.Equal((false, true), (Oracles.Reader(SchemaKind.Show, Half), Oracles.First(SchemaKind.Show, Half)));

    [Fact]
    public void A_list_beyond_the_limit_is_refused_by_the_reader_only()
    {
        var rates = string.Join(",", Enumerable.Repeat("48000", ReadLimits.Default.Elements + 1));

        var text = $$"""{"id":"p","kind":"k","name":"n","portGroups":[],"sampleRates":[{{rates}}]}""";

        Assert.Equal((false, true), (Oracles.Reader(SchemaKind.DeviceProfile, text), Oracles.Second(SchemaKind.DeviceProfile, text)));
    }

    [Fact]
    public void Extensions_nested_too_deeply_are_refused_by_the_reader_only()
    {
        var text = $$"""{"schemaVersion":1,"title":"t","rig":{},"extensions":{"x":{{new string('[', 70)}}{{new string(']', 70)}}} }""";

        Assert.Equal((false, true), (Oracles.Reader(SchemaKind.Show, text), Oracles.Second(SchemaKind.Show, text)));
    }

    private const string Half = """{"schemaVersion":1,"title":"a\ud83cb","rig":{}}""";

    private static void Expect((bool Reader, bool First, bool Second) expected, string text) =>
        Assert.Equal(expected, (Oracles.Reader(SchemaKind.Show, text), Oracles.First(SchemaKind.Show, text), Oracles.Second(SchemaKind.Show, text)));

    private static string Show(string rig) => $$"""{"schemaVersion":1,"title":"t","rig":{{rig}} }""";
}
