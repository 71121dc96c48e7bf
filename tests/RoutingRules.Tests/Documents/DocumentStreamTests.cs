using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;
using FsCheck.Xunit;
using RoutingRules.Documents;
using RoutingRules.Documents.Archives;
using RoutingRules.Documents.Tables;
using RoutingRules.Documents.Text;

namespace RoutingRules.Tests.Documents;

public sealed class DocumentStreamTests
{
    [Theory]
    [InlineData("{\"a\":1}\n{\"b\":2}\n", "{\"a\":1}", "{\"b\":2}")]
    [InlineData("\n\n{\"a\":1}\r\n\r\n{\"b\":2}", "{\"a\":1}", "{\"b\":2}")]
    [InlineData("{\"a\":1}{\"b\":2}", "{\"a\":1}", "{\"b\":2}")]
    [InlineData("{\n\"a\":[\n{},\n{ \"c\": \"}{\" }\n]}\n{\"b\":2}", "{\n\"a\":[\n{},\n{ \"c\": \"}{\" }\n]}", "{\"b\":2}")]
    [InlineData("5 true\n\"x\" null [1]", "5", "true", "\"x\"", "null", "[1]")]
    public void Values_are_told_apart_by_their_grammar(string text, params string[] documents) => Assert.Equal(documents, Texts(text));

    [Theory]
    [InlineData("{\"a\":1}\n{\"b\":\n{\"c\":3}\n{\"d\":4}", "{\"a\":1}", "{\"b\":\n", "{\"c\":3}", "{\"d\":4}")]
    [InlineData("{\"a\":1\n{\"c\":3}", "{\"a\":1\n", "{\"c\":3}")]
    [InlineData("{\"a\":[\n{\"b\":2}\n{\"c\":3}\n", "{\"a\":[\n", "{\"b\":2}", "{\"c\":3}")]
    [InlineData("{\"a\": \"cut\n{\"c\":3}", "{\"a\": \"cut\n", "{\"c\":3}")]
    [InlineData("nonsense\n{\"c\":3}", "nonsense\n", "{\"c\":3}")]
    [InlineData("{\"a\":1}},\r{\"c\":3}", "{\"a\":1}", "},\r", "{\"c\":3}")]
    [InlineData("{\n  'a': 1,\n  \"b\": { }\n}\n{\"c\":3}", "{\n  'a': 1,\n  \"b\": { }\n}\n", "{\"c\":3}")]
    [InlineData("{\n  \"a\": {\n    \"b\": 1\n", "{\n  \"a\": {\n    \"b\": 1\n")]
    public void A_malformed_one_ends_before_the_next_line_that_begins_with_a_brace(string text, params string[] documents) =>
        Assert.Equal(documents, Texts(text));

    [Fact]
    public void Each_document_knows_its_number_its_text_and_where_it_begins()
    {
        // Columns in UTF-16 units: the microphone takes two, so that the third document begins in column 12 of line 4.
        var documents = Read("\uFEFF{\"a\":1}\r\n\r\n  {\r\n\"b\": \"🎤\"} {\"c\":3}");

        Assert.Equal(["in!/1", "in!/2", "in!/3"], documents.Select(document => document.Path));
        Assert.All(documents, document => Assert.Equal("in", document.TextPath));
        Assert.Equal([new(1, 1), new(3, 3), new(4, 12)], documents.Select(document => document.Start));
    }

    [Fact]
    public void A_single_one_may_be_called_like_the_text()
    {
        var only = Assert.Single(Read("\n {\"a\":1}\n", numbersOne: false));

        Assert.Equal(("in", null, new TextPosition(2, 2)), (only.Path, only.TextPath, only.Start));
        Assert.Equal("in!/1", Assert.Single(Read("{}")).Path);
        Assert.Equal(["in!/1", "in!/2"], Read("{} {}", numbersOne: false).Select(document => document.Path));
    }

    [Theory]
    [InlineData("")]
    [InlineData("\uFEFF")]
    [InlineData(" \r\n\t")]
    public void An_empty_text_is_one_empty_document(string text)
    {
        var only = Assert.Single(Read(text));

        Assert.Equal(("in", 0, null), (only.Path, only.Utf8.Length, only.Problem));
    }

    [Fact]
    public void A_text_in_another_encoding_is_one_document()
    {
        foreach (var encoding in new[] { Encoding.Unicode, Encoding.BigEndianUnicode, Encoding.UTF32 })
        {
            byte[] bytes = [.. encoding.GetPreamble(), .. encoding.GetBytes("{}\n{}\n")];

            Assert.Equal(bytes, Assert.Single(DocumentStream.Read(new DripStream(bytes, 3), "in")).Utf8.ToArray());
        }
    }

    [Fact]
    public void One_beyond_the_limit_ends_the_reading()
    {
        var limits = new ReadLimits { Bytes = 12 };
        var documents = DocumentStream.Read(new MemoryStream("{\"a\":12345}\n{\"a\":1234567}\n{}"u8.ToArray()), "in", limits: limits).ToList();

        Assert.Equal(2, documents.Count);
        Assert.Null(documents[0].Problem);
        Assert.Contains("longer than the limit of 12 bytes. What follows was not read.", documents[1].Problem!.Message, StringComparison.Ordinal);
        Assert.Contains(
            "longer than",
            Assert.Single(DocumentStream.Read(new MemoryStream(new byte[100]), "in", limits: limits)).Problem!.Message,
            StringComparison.Ordinal
        );
        Assert.NotNull(DocumentStream.Read(new MemoryStream(Encoding.UTF8.GetBytes("{]" + new string(' ', 20))), "in", limits: limits).Single().Problem);
    }

    [Fact]
    public void A_stream_that_fails_gives_what_it_had_and_then_the_failure()
    {
        foreach (var (numbersOne, names) in new[] { (true, new[] { "in!/1", "in!/2" }), (false, ["in!/1", "in!/2"]) })
        {
            var documents = DocumentStream.Read(new DripStream("{\"a\":1}\n{\"b\""u8.ToArray(), 5, fails: true), "in", numbersOne).ToList();

            Assert.Equal(names, documents.Select(document => document.Path));
            Assert.Equal("{\"a\":1}", Encoding.UTF8.GetString(documents[0].Utf8.Span));
            Assert.Contains("Reading failed: The cable came out.", documents[1].Problem!.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_long_text_in_small_pieces_is_not_read_again_with_each_of_them()
    {
        var text = $$"""{"a":"{{new string('x', 20_000_000)}}"}""";
        var started = Environment.TickCount64;
        var only = Assert.Single(DocumentStream.Read(new DripStream(Encoding.UTF8.GetBytes(text), 1000), "in"));

        Assert.Equal(text.Length, only.Utf8.Length);

        // With each of 20,000 pieces it would be 200 gigabytes of parsing, minutes; as it is, it is far below a second.
        Assert.InRange(Environment.TickCount64 - started, 0, 20_000);
    }

    [Fact]
    public void Documents_that_were_taken_are_not_kept()
    {
        var line = Encoding.UTF8.GetBytes($$"""{"a":"{{new string('x', 100_000)}}"}{{"\n"}}""");
        var given = new List<WeakReference>();
        var text = new MemoryStream([.. Enumerable.Repeat(line, 200).SelectMany(bytes => bytes)]);
        foreach (var document in DocumentStream.Read(text, "in"))
        {
            Assert.Equal(line.Length - 1, document.Utf8.Length);
            Assert.True(MemoryMarshal.TryGetArray(document.Utf8, out var bytes));
            given.Add(new WeakReference(bytes.Array));
            if (given.Count == 200)
            {
                GC.Collect();
                Assert.InRange(given.Count(reference => reference.IsAlive), 1, 4);
            }
        }

        Assert.Equal(200, given.Count);
    }

    // Source: System.Text.Json of .NET, whose reader of top-level values shares nothing with the splitter but the grammar.
    [Property(MaxTest = 300)]
    public bool Values_in_a_row_come_out_as_another_reader_has_them(int seed, byte step)
    {
        var random = new Random(seed);
        var text = new StringBuilder();
        for (var i = random.Next(6); i >= 0; i--)
        {
            Write(random, text, 3, random.Next(2) == 0);
            text.Append(" \n \r\n\t"[random.Next(6)]);
        }

        var bytes = Encoding.UTF8.GetBytes(text.ToString());
        var expected = JsonSerializer.DeserializeAsyncEnumerable<JsonElement>(new MemoryStream(bytes), topLevelValues: true).ToBlockingEnumerable();
        var found = DocumentStream.Read(new DripStream(bytes, step + 1), "in").Select(document => JsonDocument.Parse(document.Utf8).RootElement);
        return expected.SequenceEqual(found, EqualityComparer<JsonElement>.Create(JsonElement.DeepEquals, _ => 0));
    }

    // Whatever is cut out of or put into the text, no byte but blanks between documents is lost, and places are those of the text.
    [Property(MaxTest = 300)]
    public void Nothing_of_a_broken_text_is_lost(int seed, byte step)
    {
        var random = new Random(seed);
        var text = new StringBuilder();
        for (var i = 0; i < 4; i++)
        {
            Write(random, text, 3, random.Next(2) == 0);
            text.Append('\n');
        }

        text.Replace("🎤", "é");
        for (var i = 0; i < 3; i++)
        {
            text[random.Next(text.Length)] = "{}[]\",: \nx"[random.Next(10)];
        }

        var bytes = Encoding.UTF8.GetBytes(text.ToString());
        var lines = text.ToString().Split('\n');
        var left = text.ToString();
        foreach (var document in DocumentStream.Read(new DripStream(bytes, step + 1), "in"))
        {
            var content = Encoding.UTF8.GetString(document.Utf8.Span);
            Assert.StartsWith(content, left.TrimStart(' ', '\n', '\r', '\t'), StringComparison.Ordinal);
            left = left.TrimStart(' ', '\n', '\r', '\t')[content.Length..];
            Assert.StartsWith(content.Split('\n')[0], lines[document.Start.Line - 1][(document.Start.Column - 1)..], StringComparison.Ordinal);
        }

        Assert.True(string.IsNullOrWhiteSpace(left));
    }

    private static void Write(Random random, StringBuilder text, int depth, bool hasLines)
    {
        var blank = hasLines ? "\n  " : "";
        switch (random.Next(depth == 0 ? 3 : 6))
        {
            case 0:
                text.Append(random.Next(-99, 99));
                break;
            case 1:
                text.Append("\"é🎤\\\"{[ ").Append(random.Next(9)).Append('"');
                break;
            case 2:
                text.Append(random.Next(2) == 0 ? "true" : "null");
                break;
            case 3:
                text.Append('[').Append(blank);
                Write(random, text, depth - 1, hasLines);
                text.Append(',').Append(blank);
                Write(random, text, depth - 1, hasLines);
                text.Append(blank).Append(']');
                break;
            default:
                text.Append("{\"a\":").Append(blank);
                Write(random, text, depth - 1, hasLines);
                text.Append(",\"b\":");
                Write(random, text, depth - 1, hasLines);
                text.Append(blank).Append('}');
                break;
        }
    }

    private static List<DocumentFile> Read(string text, bool numbersOne = true) =>
        [.. DocumentStream.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)), "in", numbersOne)];

    private static IEnumerable<string> Texts(string text)
    {
        var documents = Read(text).Select(document => Encoding.UTF8.GetString(document.Utf8.Span)).ToList();
        foreach (var step in new[] { 1, 2, 7 })
        {
            Assert.Equal(
                documents,
                DocumentStream.Read(new DripStream(Encoding.UTF8.GetBytes(text), step), "in").Select(document => Encoding.UTF8.GetString(document.Utf8.Span))
            );
        }

        return documents;
    }
}
