namespace RoutingRules.Tests.Documents;

/// <summary>One bad value, one finding, in the right words and at the right place.</summary>
public sealed class BadValueTests
{
    [Fact]
    public void A_misspelt_member_is_named_with_the_one_that_was_meant()
    {
        var finding = Sample.OneFinding("""{"schemaVersion":1,"title":"t","titel":"u","rig":{}}""");

        Assert.Equal("RR1002", finding.Rule);
        Assert.Equal("member-unknown", finding.Name);
        Assert.Equal("/titel", finding.Pointer);
        Assert.Equal("\"titel\": the format has no such member here; did you mean \"title\"?", finding.Message);
        Assert.Equal("Write \"title\", or move the content under extensions.", finding.Remedy);
        Assert.Equal((1, 32), (finding.Line!.Value, finding.Column!.Value));
    }

    [Fact]
    public void A_member_that_resembles_none_gets_no_suggestion()
    {
        var finding = Sample.OneFinding("""{"schemaVersion":1,"title":"t","rig":{"vehicles":[[{"a":1}]]}}""");

        Assert.Equal("/rig/vehicles", finding.Pointer);
        Assert.Equal("Rig, \"vehicles\": the format has no such member here.", finding.Message);
    }

    [Fact]
    public void An_unknown_member_name_is_escaped_in_the_pointer()
    {
        Assert.Equal("/rig/a~1b~0c\"", Sample.OneFinding("""{"schemaVersion":1,"title":"t","rig":{"a/b~c\"":1}}""").Pointer);
    }

    [Fact]
    public void A_member_written_twice_is_reported_at_the_second_and_the_first_counts()
    {
        var read = Sample.Read("{\"schemaVersion\":1,\"title\":\"first\",\n \"title\":\"second\",\"rig\":{}}");

        var finding = Assert.Single(read.Findings);
        Assert.Equal(("RR1003", "/title"), (finding.Rule, finding.Pointer));
        Assert.Equal((2, 2), (finding.Line!.Value, finding.Column!.Value));
        Assert.Equal("first", read.Value!.Title);
        Assert.False(read.IsUsable);
    }

    [Fact]
    public void Names_that_differ_in_escapes_only_are_twice_the_same()
    {
        Assert.Equal("RR1003", Sample.OneFinding("""{"schemaVersion":1,"title":"a","t\u0069tle":"b","rig":{}}""").Rule);
    }

    [Fact]
    public void A_missing_member_is_named_with_its_meaning_at_the_object_that_lacks_it()
    {
        var finding = Sample.OneFinding(Sample.WithRig("""{"devices":[{"id":"desk"}]}"""));

        Assert.Equal(("RR1004", "/rig/devices/0/profile"), (finding.Rule, finding.Pointer));
        Assert.Equal("Device 1 (desk), \"profile\": this member is missing: The id of the profile that describes the device type.", finding.Message);
    }

    [Fact]
    public void Without_a_title_there_is_no_show()
    {
        var read = Sample.Read("""{"schemaVersion":1,"rig":{}}""");

        Assert.Null(read.Value);
        Assert.Equal(("RR1004", "/title"), (read.Findings[0].Rule, read.Findings[0].Pointer));
    }

    [Theory]
    [InlineData("\"48000\"", "a whole number belongs here, not the text \"48000\".", "Write 48000 without quotation marks.")]
    [InlineData("null", "a whole number belongs here, not null.", "Write a value, or leave the member out.")]
    [InlineData("48000.5", "a whole number belongs here, not the number 48000.5.", "Write a whole number in digits only.")]
    [InlineData("48e3", "a whole number belongs here, not the number 48e3.", "Write a whole number in digits only.")]
    [InlineData("true", "a whole number belongs here, not true.", "Write the value as the message says.")]
    [InlineData("[48000]", "a whole number belongs here, not a list.", "Write the value as the message says.")]
    [InlineData("{\"hz\":48000}", "a whole number belongs here, not an object.", "Write the value as the message says.")]
    [InlineData("\"fast\"", "a whole number belongs here, not the text \"fast\".", "Write the value as the message says.")]
    public void A_sample_rate_that_is_no_number_is_of_the_wrong_type(string value, string message, string remedy)
    {
        var finding = Sample.OneFinding(Sample.WithRig($$"""{"clocks":[{"id":"c1","leader":"desk","sampleRate":{{value}}}]}"""));

        Assert.Equal(("RR1005", "/rig/clocks/0/sampleRate"), (finding.Rule, finding.Pointer));
        Assert.Equal("Clock 1 (c1), \"sampleRate\": " + message, finding.Message);
        Assert.Equal(remedy, finding.Remedy);
    }

    [Theory]
    [InlineData("7999")]
    [InlineData("384001")]
    [InlineData("-48000")]
    [InlineData("0")]
    [InlineData("99999999999999999999999999")]
    public void A_sample_rate_beyond_the_bounds_is_out_of_range(string value)
    {
        var finding = Sample.OneFinding(Sample.WithRig($$"""{"clocks":[{"id":"c1","leader":"desk","sampleRate":{{value}}}]}"""));

        Assert.Equal("RR1006", finding.Rule);
        Assert.Equal($"Clock 1 (c1), \"sampleRate\": {value} is not between 8000 and 384000.", finding.Message);
    }

    [Theory]
    [InlineData("8000")]
    [InlineData("384000")]
    public void The_bounds_themselves_are_in_range(string value) =>
        Sample.Good(Sample.WithRig($$"""{"clocks":[{"id":"c1","leader":"desk","sampleRate":{{value}}}]}"""));

    [Theory]
    [InlineData("0", false)]
    [InlineData("0.0", false)]
    [InlineData("-1", false)]
    [InlineData("100000.1", false)]
    [InlineData("1e400", false)]
    [InlineData("1e-9", true)]
    [InlineData("100000", true)]
    [InlineData("1E2", true)]
    public void A_length_is_above_0_and_at_most_100000_metres(string value, bool good)
    {
        var read = Sample.Read(Sample.WithRig($$"""{"links":[{"id":"l","network":"n","from":"a/b/1","to":"c/d/1","lengthMetres":{{value}}}]}"""));

        Assert.Equal(good ? [] : ["RR1006"], read.Findings.Select(finding => finding.Rule));
    }

    [Theory]
    [InlineData("desk/aux/1-0", "holds the number 0, but numbers count from 1")]
    [InlineData("desk/aux/8-1", "runs backwards; put the smaller number first")]
    [InlineData("desk/aux/99999999999", "holds a number above 99999")]
    [InlineData("desk/aux/100000", "holds a number above 99999")]
    [InlineData("desk/aux/01", "holds a number with a leading zero")]
    [InlineData("desk/aux/", "lacks a number")]
    [InlineData("desk/aux/1-", "lacks a number")]
    [InlineData("desk/aux/-1", "lacks a number")]
    [InlineData("desk/aux/one", "holds something other than digits where a number belongs")]
    [InlineData("desk/aux", "has the wrong number of parts")]
    [InlineData("desk/aux/1/2", "has the wrong number of parts")]
    [InlineData("desk//1", "holds an id that is not")]
    [InlineData("de sk/aux/1", "holds an id that is not")]
    [InlineData("", "is empty")]
    public void An_address_that_cannot_be_read_is_explained(string address, string part)
    {
        var finding = Sample.OneFinding(Sample.WithFeeds($$"""[{"id":"f","role":"main","source":"{{address}}","to":[{"at":"box/out/1"}]}]"""));

        Assert.Equal(("RR1007", "/feeds/0/source"), (finding.Rule, finding.Pointer));
        Assert.StartsWith($"Feed 1 (f), \"source\": \"{address}\" {part}", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "the id is empty")]
    [InlineData("a b", "the id \"a b\" holds a space")]
    [InlineData("a\\u000ab", "the id \"aU+000Ab\" holds the character U+000A")]
    [InlineData("a\\u0085", "the id \"aU+0085\" holds the character U+0085")]
    [InlineData("bühne", "the id \"bühne\" holds 'ü'")]
    [InlineData("a/b", "the id \"a/b\" holds '/'")]
    [InlineData("-a", "\"-a\" is no id")]
    [InlineData("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa", "is no id; an id is 1 to 64 letters")]
    public void An_id_that_is_none_is_explained(string id, string part)
    {
        var finding = Sample.OneFinding(Sample.WithRig($$"""{"zones":[{"id":"{{id}}"}]}"""));

        Assert.Equal(("RR1007", "/rig/zones/0/id"), (finding.Rule, finding.Pointer));
        Assert.Contains(part, finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("generic/a/b", true)]
    [InlineData("solo", true)]
    [InlineData("a/b/c/d", false)]
    [InlineData("a//b", false)]
    [InlineData("/a", false)]
    [InlineData("a/", false)]
    [InlineData("", false)]
    public void A_profile_id_has_one_to_three_parts(string id, bool good)
    {
        var read = Sample.Read(Sample.WithRig($$"""{"devices":[{"id":"d","profile":"{{id}}"}]}"""));

        Assert.Equal(good ? [] : ["RR1007"], read.Findings.Select(finding => finding.Rule));
    }

    [Fact]
    public void A_word_outside_a_closed_list_gets_the_list_and_the_nearest_word()
    {
        var finding = Sample.OneFinding(Sample.WithRig("""{"zones":[{"id":"a","side":"houseleft"}]}"""));

        Assert.Equal("RR1007", finding.Rule);
        Assert.Equal("Zone 1 (a), \"side\": \"houseleft\" is not one of none, house-left, house-right, centre; did you mean house-left?", finding.Message);
    }

    [Theory]
    [InlineData("in-ear", "")]
    [InlineData("x2-7", "")]
    [InlineData("In-Ear", "RR1007")]
    [InlineData("in--ear", "RR1007")]
    [InlineData("-in", "RR1007")]
    [InlineData("in-", "RR1007")]
    [InlineData("", "RR1007")]
    [InlineData("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa", "")]
    [InlineData("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa", "RR1006")]
    public void An_open_word_is_lower_case_with_single_hyphens_and_at_most_64_characters(string word, string rule)
    {
        var read = Sample.Read(Sample.WithFeeds($$"""[{"id":"f","role":"{{word}}","source":"a/b/1","to":[{"at":"c/d/1"}]}]"""));

        Assert.Equal(rule, string.Join(",", read.Findings.Select(finding => finding.Rule)));
    }

    [Theory]
    [InlineData("2027-02-29", "is no day of the calendar")]
    [InlineData("2027-13-01", "is no day of the calendar")]
    [InlineData("0000-01-01", "is no day of the calendar")]
    [InlineData("12.06.2027", "is no date; write year-month-day, such as 2027-06-12")]
    [InlineData("2027-6-12", "is no date; write year-month-day, such as 2027-06-12")]
    [InlineData("2027-06-12T00:00", "is no date; write year-month-day, such as 2027-06-12")]
    public void A_date_that_is_none_is_explained(string date, string part)
    {
        var finding = Sample.OneFinding($$"""{"schemaVersion":1,"title":"t","date":"{{date}}","rig":{} }""");

        Assert.Equal("RR1007", finding.Rule);
        Assert.Equal($"\"date\": \"{date}\" {part}.", finding.Message);
    }

    [Fact]
    public void A_leap_day_is_a_day() =>
        Assert.Equal(new DateOnly(2028, 2, 29), Sample.Good("""{"schemaVersion":1,"title":"t","date":"2028-02-29","rig":{}}""").Date);

    [Theory]
    [InlineData("\\u0000", "U+0000")]
    [InlineData("\\n", "U+000A")]
    [InlineData("\\u001f", "U+001F")]
    [InlineData("\u007f", "U+007F")]
    [InlineData("\u0080", "U+0080")]
    [InlineData("\u009f", "U+009F")]
    public void A_text_holds_no_control_characters(string character, string code)
    {
        var finding = Sample.OneFinding($$"""{"schemaVersion":1,"title":"näme {{character}}!","rig":{} }""");

        Assert.Equal(("RR1007", $"\"title\": the text holds the character {code}, which no label can show."), (finding.Rule, finding.Message));
    }

    [Theory]
    [InlineData("\u00a0")]
    [InlineData("\u2028")]
    [InlineData("\ufeff")]
    [InlineData("\U0001F3A4")]
    public void Any_other_character_is_kept(string character) =>
        Assert.Equal($"a{character}b", Sample.Good($$"""{"schemaVersion":1,"title":"a{{character}}b","rig":{} }""").Title);

    [Theory]
    [InlineData("\\ud83c")]
    [InlineData("\\udfa4")]
    [InlineData("\\udfa4\\ud83c")]
    [InlineData("\\ud83c x \\udfa4")]
    [InlineData("\\ud83c\\n")]
    public void Half_a_surrogate_pair_is_refused(string half)
    {
        var finding = Sample.OneFinding($$"""{"schemaVersion":1,"title":"a{{half}}b","rig":{} }""");

        Assert.Equal(("RR1007", "/title"), (finding.Rule, finding.Pointer));
        Assert.Contains("surrogate", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Half_a_surrogate_pair_in_a_member_name_makes_it_unknown() =>
        Assert.Equal("RR1002", Sample.OneFinding("""{"schemaVersion":1,"title":"t","rig":{},"a\ud83c":1}""").Rule);

    [Theory]
    [InlineData(4096, true)]
    [InlineData(4097, false)]
    public void A_text_has_at_most_4096_characters(int length, bool good)
    {
        var read = Sample.Read($$"""{"schemaVersion":1,"title":"{{new string('ü', length)}}","rig":{} }""");

        Assert.Equal(good ? [] : ["RR1006"], read.Findings.Select(finding => finding.Rule));
    }
}
