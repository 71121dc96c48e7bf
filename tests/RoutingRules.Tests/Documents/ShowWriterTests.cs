using System.Buffers;
using System.Text;
using RoutingRules.Documents;
using RoutingRules.Model;

namespace RoutingRules.Tests.Documents;

public sealed class ShowWriterTests
{
    [Fact]
    public void A_small_show_is_written_indented_in_the_fixed_order_without_what_says_nothing()
    {
        var show = Sample.Good(
            """
            {"patch":{},"rig":{"zones":[{"side":"none","id":"a","near":[]}],"devices":[]},"title":"Ä \"1\" 🎤","schemaVersion":1,"feeds":[]}
            """
        );

        var text = Encoding.UTF8.GetString(ShowWriter.ToUtf8(show));

        Assert.Equal(
            """
            {
              "schemaVersion": 1,
              "title": "Ä \"1\" \uD83C\uDFA4",
              "rig": {
                "zones": [
                  {
                    "id": "a"
                  }
                ]
              }
            }

            """.ReplaceLineEndings("\n"),
            text
        );
    }

    [Fact]
    public void A_route_that_clears_is_written_with_its_null() =>
        Assert.Contains(
            "\"from\": null",
            Encoding.UTF8.GetString(ShowWriter.ToUtf8(Sample.Good(Sample.WithPatch("""{"routes":[{"from":null,"to":"a/b/1"}]}""")))),
            StringComparison.Ordinal
        );

    [Fact]
    public void Extensions_are_written_as_they_stood()
    {
        const string Odd = """{ "b":1,"a" : [1.50, "\u0041", -0 ],"b":2 }""";

        var text = Encoding.UTF8.GetString(ShowWriter.ToUtf8(Sample.Good($$"""{"schemaVersion":1,"title":"t","rig":{"extensions":{{Odd}} } }""")));

        Assert.Contains(Odd, text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{")]
    [InlineData("{} {}")]
    public void Extensions_that_are_no_object_are_a_wrong_call(string json)
    {
        var show = new Show
        {
            Title = "t",
            Rig = new Rig(),
            Extensions = new ExtensionData { Json = json },
        };

        Assert.Throws<ArgumentException>(() => ShowWriter.ToUtf8(show));
    }

    [Fact]
    public void Both_ways_of_writing_give_the_same_bytes()
    {
        var show = Sample.Good(Sample.Show);
        var buffer = new ArrayBufferWriter<byte>();

        ShowWriter.Write(show, buffer);

        Assert.Equal(ShowWriter.ToUtf8(show), buffer.WrittenSpan.ToArray());
        Assert.Equal(show, ShowReader.Read(buffer.WrittenSpan).Value);
    }
}
