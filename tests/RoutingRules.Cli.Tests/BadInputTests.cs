using System.Text;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using RoutingRules.Schema;

namespace RoutingRules.Cli.Tests;

/// <summary>Bad documents: each is a finding or a message with place and remedy, ends with 1 or 2, and leaves no file behind.</summary>
public sealed class BadInputTests : IDisposable
{
    private const long HundredMegabytes = 100L * 1024 * 1024;

    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    public static TheoryData<string, string, string> Texts =>
        new()
        {
            { "empty", "", "The file is empty" },
            { "blank", " \n\t ", "The file is empty" },
            { "cut off", Shows.Small[..200], "the text ends before the document does" },
            { "a list", "[ 1 ]", "document is not an object" },
            { "a comment", Shows.Small.Replace("\"title\"", "// title\n\"title\"", StringComparison.Ordinal), "comments are not allowed" },
            { "written twice", Shows.Small.Replace("\"title\": \"Small\"", "\"title\": \"Small\", \"title\": \"Large\"", StringComparison.Ordinal), "RR1003" },
            { "a number as text", Shows.Small.Replace("1000", "\"1000\"", StringComparison.Ordinal), "RR1005" },
            { "text as a number", Shows.Small.Replace("\"Small\"", "5", StringComparison.Ordinal), "RR1005" },
            { "number zero", Shows.Small.Replace("desk/transmit/1\"", "desk/transmit/1-0\"", StringComparison.Ordinal), "numbers count from 1" },
            { "backwards", Shows.Small.Replace("desk/transmit/1-8", "desk/transmit/8-1", StringComparison.Ordinal), "runs backwards" },
            { "far too large", Shows.Small.Replace("desk/aux/1", "desk/aux/99999999999", StringComparison.Ordinal), "above 99999" },
            { "another version", Shows.Small.Replace("\"schemaVersion\": 1", "\"schemaVersion\": 99", StringComparison.Ordinal), "RR1009" },
            { "a control character in an id", Shows.Small.Replace("\"id\": \"box\"", "\"id\": \"bo\\u0007x\"", StringComparison.Ordinal), "RR1007" },
            { "another script in an id", Shows.Small.Replace("\"id\": \"box\"", "\"id\": \"b\u00f6x\"", StringComparison.Ordinal), "RR1007" },
            { "half a surrogate pair", Shows.Small.Replace("\"Small\"", "\"Sm\\ud800all\"", StringComparison.Ordinal), "RR1007" },
            { "unknown member", Shows.Small.Replace("\"title\"", "\"tittle\"", StringComparison.Ordinal), "RR1002" },
            { "depth bomb", Shows.Small.Replace("\"Small\"", new string('[', 5000) + new string(']', 5000), StringComparison.Ordinal), "RR100" },
            {
                "depth bomb in extensions",
                Shows.Small.Replace("\"title\"", "\"extensions\": " + Deep(5000) + ", \"title\"", StringComparison.Ordinal),
                "RR100"
            },
        };

    private static string Deep(int depth) => string.Concat(Enumerable.Repeat("{\"a\":", depth)) + "1" + new string('}', depth);

    [Theory]
    [MemberData(nameof(Texts))]
    public void Check_reports_it(string name, string text, string expected)
    {
        var path = folder.Write("bad.show.json", text);
        var result = Tool.Run("check", path, "--report", $"json={folder.At("r.json")}").Civil();

        Assert.True(result.Code == 2, name);
        Assert.Contains(expected, result.Out, StringComparison.Ordinal);
        Assert.Contains(path, result.Out, StringComparison.Ordinal);
        Assert.Contains("What to do: ", result.Out, StringComparison.Ordinal);
        Assert.DoesNotContain(result.Out, c => char.IsControl(c) && c != '\n');
        Assert.Empty(SchemaValidator.Validate(SchemaKind.Report, File.ReadAllBytes(folder.At("r.json"))));
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void Assign_and_trace_refuse_it_and_write_nothing(string name, string text, string expected)
    {
        var path = folder.Write("bad.show.json", text);
        var assigned = Tool.Run("assign", path).Civil();
        var traced = Tool.Run("trace", path, "desk/aux/1").Civil();
        var kept = Tool.Run("assign", path, "--out", folder.At("out.show.json")).Civil();

        Assert.True(assigned.Code == 2 && traced.Code == 2 && kept.Code == 2, name);
        Assert.Equal("", assigned.Out);
        Assert.Equal("", traced.Out);
        Assert.Contains(expected, assigned.Error, StringComparison.Ordinal);
        Assert.Contains(expected, traced.Error, StringComparison.Ordinal);
        Assert.Contains(expected, kept.Out, StringComparison.Ordinal);
        Assert.Equal(["bad.show.json"], folder.Names);
    }

    [Fact]
    public void A_show_in_another_encoding_is_refused()
    {
        var text = Shows.Small.Replace("Small", "Sm\u00e5ll", StringComparison.Ordinal);
        foreach (var encoding in new[] { Encoding.Latin1, Encoding.Unicode, Encoding.BigEndianUnicode, Encoding.UTF32 })
        {
            var path = folder.Write("bad.show.json", [.. encoding.GetPreamble(), .. encoding.GetBytes(text)]);
            var result = Tool.Run("check", path).Civil();

            Assert.Equal(2, result.Code);
            Assert.Contains("Save the file as UTF-8.", result.Out, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_byte_order_mark_is_taken()
    {
        var path = folder.Write("a.show.json", [.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(Shows.Small)]);

        Assert.NotEqual(2, Tool.Run("check", path).Civil().Code);
    }

    [Fact]
    public void A_file_of_a_hundred_megabytes_is_refused_by_its_length()
    {
        var path = folder.At("big.show.json");
        using (var file = File.Create(path))
        {
            file.SetLength(HundredMegabytes);
        }

        var before = GC.GetAllocatedBytesForCurrentThread();
        var result = Tool.Run("check", path).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains("104857600 bytes, more than the limit", result.Out, StringComparison.Ordinal);
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < HundredMegabytes / 4);
    }

    [Fact]
    public void Standard_input_without_end_is_refused_when_the_limit_is_passed()
    {
        using var endless = new EndlessStream();
        var result = Tool.Run(["check", "-"], endless).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains("longer than the limit", result.Out, StringComparison.Ordinal);
        Assert.True(endless.Given <= ReadLimits.Default.Bytes + 1);
    }

    [Fact]
    public void Control_characters_in_labels_never_reach_a_terminal()
    {
        var label = """, "labels": [ { "at": "desk/aux/1", "text": "\u001b[2J\u202emoor\u2028\u200f\ud83c\udfb8" } ] }""";
        var text = Shows.Small.Replace("desk/transmit/2-8\" } ]\n  }", $"desk/transmit/2-8\" }} ]\n{label}", StringComparison.Ordinal);
        Assert.NotEqual(Shows.Small, text);
        var result = Tool.Run(["trace", "-", "desk/aux/1"], Encoding.UTF8.GetBytes(text)).Civil();

        if (result.Code == 0)
        {
            Assert.Contains("""desk/aux/1 "\u001b[2J\u202emoor\u2028\u200f""" + "\U0001F3B8\"", result.Out, StringComparison.Ordinal);
        }
        else
        {
            Assert.Contains("RR100", result.Error, StringComparison.Ordinal);
        }

        Assert.DoesNotContain(result.Out + result.Error, c => (char.IsControl(c) && c != '\n') || c is '\u202e' or '\u2028' or '\u200f');
    }

    [Fact]
    public void Control_characters_in_arguments_never_reach_a_terminal()
    {
        foreach (
            var arguments in new string[][]
            {
                ["check", "\u001b[2J"],
                ["\u001b[2J"],
                ["trace", "a", "\u001b[2J"],
                ["rules", "\u001b[2J"],
                ["profiles", "\u001b[2J"],
                ["assign", "a", "--spares", "\u001b"],
            }
        )
        {
            var result = Tool.Run(arguments).Civil();
            Assert.Equal(2, result.Code);
            Assert.DoesNotContain('\u001b', result.Out + result.Error);
        }
    }

    [Fact]
    public void An_unknown_profile_is_a_finding()
    {
        var path = folder.Write("a.show.json", Shows.Small.Replace("stage-box-small", "stage-bux-small", StringComparison.Ordinal));
        var result = Tool.Run("check", path).Civil();

        Assert.Equal(1, result.Code);
        Assert.Contains("generic/stage-bux-small", result.Out, StringComparison.Ordinal);
        Assert.Contains($"{path}:8:", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Cables_in_a_ring_are_a_finding()
    {
        var path = folder.Write(
            "a.show.json",
            """
            {
              "schemaVersion": 1, "title": "Ring",
              "rig": {
                "devices": [ { "id": "a", "profile": "generic/amplifier-4" }, { "id": "b", "profile": "generic/amplifier-4" } ],
                "cables": [ { "from": "a/out/1", "to": "b/in/1" }, { "from": "b/out/1", "to": "a/in/1" } ]
              }
            }
            """
        );
        var result = Tool.Run("check", path).Civil();

        Assert.Equal(1, result.Code);
        Assert.Contains("a/in/1", result.Out, StringComparison.Ordinal);
        var trace = Tool.Run("trace", path, "a/out/1").Civil();
        Assert.Equal(0, trace.Code);
        Assert.Contains("no signal enters", trace.Out, StringComparison.Ordinal);
    }

    private sealed class EndlessStream : Stream
    {
        public long Given { get; private set; }

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => Given;
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count)
        {
            Array.Fill(buffer, (byte)' ', offset, count);
            Given += count;
            return count;
        }

        public override void Flush() { }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
