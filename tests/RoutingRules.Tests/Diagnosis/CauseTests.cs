using System.Text;
using RoutingRules.Diagnosis;
using RoutingRules.Documents;
using RoutingRules.Engine.DocumentRuns;

namespace RoutingRules.Tests.Diagnosis;

/// <summary>Slips planted by hand in the club show, each with the words in which its cause is told.</summary>
public sealed class CauseTests
{
    private static readonly string Club = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "examples", "02-club-night.show.json"));

    [Fact]
    public void A_clean_show_has_no_cause() => Assert.Empty(Causes(Club));

    [Fact]
    public void Plugs_that_are_exchanged_are_told_at_the_cables()
    {
        var cause = Assert.Single(
            Causes(
                Replaced(
                    "\"from\": \"box/out/1-2\", \"to\": \"amp/in/1-2\", \"way\": \"rack tails 1-2\"",
                    "\"from\": \"box/out/1\", \"to\": \"amp/in/2\" }, { \"from\": \"box/out/2\", \"to\": \"amp/in/1\""
                )
            )
        );

        Assert.Equal("Main L and Main R are exchanged at the cables to Main amp", cause.Title);
        Assert.Equal(
            "Change the cable from box/out/1 to amp/in/2 into box/out/2 to amp/in/2 and change the cable from box/out/2 to amp/in/1 into box/out/1 to amp/in/1",
            cause.Repair.Title
        );
    }

    [Fact]
    public void Cables_of_two_wedges_that_are_exchanged_are_no_exchange_in_the_console()
    {
        var cause = Assert.Single(Causes(Replaced("wedge-1/in/1\" },", "wedge-2/in/1\" },", "\"to\": \"wedge-2/in/1\" }\n", "\"to\": \"wedge-1/in/1\" }\n")));

        Assert.Equal("Monitor singer and Monitor drums are exchanged at the cables to Wedge 1 and Wedge 2", cause.Title);
    }

    [Fact]
    public void A_missing_route_is_told_with_what_it_brings()
    {
        var cause = Assert.Single(Causes(Replaced("      { \"from\": \"desk/aux/1-2\", \"to\": \"desk/transmit/3-4\" },\n", "")));

        Assert.Equal("The route from desk/aux/1-2 to desk/transmit/3-4 is missing: Monitor singer and Monitor drums", cause.Title);
        Assert.Equal(CauseConfidence.Only, cause.Confidence);
    }

    [Fact]
    public void A_missing_stream_is_one_cause_however_many_lines_it_brings()
    {
        var check = Check(
            Replaced(
                "      { \"id\": \"stage-1\", \"network\": \"audio\", \"from\": \"box/transmit/1-4\", \"to\": [ { \"at\": \"desk/receive/1-4\" } ] },\n",
                ""
            )
        );

        var cause = Assert.Single(check.Causes).Cause;
        Assert.Equal("The stream from box/transmit/1-4 to desk is missing: Kick, Snare, Overhead and Bass", cause.Title);
        Assert.Equal("Send box/transmit/1-4 to desk/receive/1-4", cause.Repair.Title);
        Assert.Equal(
            check.Result.Findings.Where(finding => finding.Severity > RoutingRules.Rules.Severity.Note).Select(finding => finding.Fingerprint()),
            cause.Findings.Where(
                check.Result.Findings.Where(finding => finding.Severity > RoutingRules.Rules.Severity.Note).Select(finding => finding.Fingerprint()).Contains
            )
        );
    }

    [Fact]
    public void The_wrong_half_of_a_stream_is_told_by_its_slots()
    {
        var cause = Assert.Single(Causes(Replaced("\"channels\": \"1-4\"", "\"channels\": \"5-8\"")));

        Assert.Equal("Stage box receives desk/transmit/5-8 instead of 1-4: Main L, Main R, Monitor singer and Monitor drums", cause.Title);
    }

    [Fact]
    public void A_run_that_starts_too_high_is_told_by_how_far()
    {
        var cause = Assert.Single(Causes(Replaced("\"from\": \"desk/aux/1-2\"", "\"from\": \"desk/aux/9-10\"")));

        Assert.Equal("Monitor singer and Monitor drums are taken 8 buses too high in the routes of desk", cause.Title);
        Assert.Equal("Change the route from desk/aux/9-10 to desk/transmit/3-4 into desk/aux/1-2 to desk/transmit/3-4", cause.Repair.Title);
    }

    [Fact]
    public void A_show_without_a_patch_has_one_cause()
    {
        var show = ShowReader.Read(Encoding.UTF8.GetBytes(Club)).Value!;
        show = show with { Patch = show.Patch with { Streams = default, Routes = default } };

        var cause = Assert.Single(Causes(Encoding.UTF8.GetString(ShowWriter.ToUtf8(show))));

        Assert.Equal("Nothing is patched yet: 4 mixes and 9 lines have no path", cause.Title);
        Assert.Equal("Run assign", cause.Repair.Title);
    }

    [Fact]
    public void A_wrong_rate_is_one_cause()
    {
        var cause = Assert.Single(Causes(Replaced("\"sampleRate\": 48000", "\"sampleRate\": 44100")));

        Assert.Equal("Clock 'c1' runs at 44100 Hz instead of 48000 Hz", cause.Title);
    }

    [Fact]
    public void A_network_cable_that_is_unplugged_is_one_cause()
    {
        // Another link keeps the show one that writes its links down.
        var cause = Assert.Single(
            Causes(
                Replaced(
                    "\"to\": \"box/net/1\", \"medium\": \"copper-solid\", \"lengthMetres\": 40, \"speedMbps\": 1000 } ]",
                    "\"to\": \"spare/net/1\", \"speedMbps\": 1000 } ]",
                    "{ \"id\": \"amp\"",
                    "{ \"id\": \"spare\", \"profile\": \"generic/stage-box-small\", \"power\": [ \"p\" ] },\n      { \"id\": \"amp\""
                )
            )
        );

        Assert.Equal("No link joins desk and Stage box: a network cable is unplugged or not written down", cause.Title);
    }

    [Fact]
    public void Names_that_count_on_stand_as_a_run() =>
        Assert.Equal("Monitors, Mon 1–5 and Talk", NameRuns.Of(["Monitors", "Mon 1", "Mon 2", "Mon 3", "Mon 4", "Mon 5", "Talk"]));

    private static string Replaced(params string[] words)
    {
        var text = Club;
        for (var i = 0; i < words.Length; i += 2)
        {
            Assert.Contains(words[i], text, StringComparison.Ordinal);
            text = text.Replace(words[i], words[i + 1], StringComparison.Ordinal);
        }

        return text;
    }

    private static DocumentCheck Check(string text)
    {
        var utf8 = Encoding.UTF8.GetBytes(text);
        return DocumentCheck.Run(CleanShows.Engine, "club.show.json", utf8).WithCauses(CleanShows.Engine, utf8);
    }

    private static IEnumerable<Cause> Causes(string text) => Check(text).Causes.Select(cause => cause.Cause);
}
