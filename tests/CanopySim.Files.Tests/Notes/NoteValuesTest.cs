using CanopySim.Assessment;
using CanopySim.Files.Notes;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Files.Tests.Notes;

public sealed class NoteValuesTest
{
    // Values by hand: an inch is 0.0254 m, a foot 0.3048 m, a US gallon 3.785411784 l; blades after Buttaro et al. 2015:
    // 0.914 x 12 x 13 - 0.465 = 142.119 cm2; 0.914 x 10 x 11 - 0.465 = 100.075 cm2.
    [Theory]
    [InlineData("shoot_length", "45", "cm", NoteMeasure.Length, 0.45)]
    [InlineData("Shoot length", "17 1/2", "in", NoteMeasure.Length, 0.4445)]
    [InlineData("length", "17½ in", "", NoteMeasure.Length, 0.4445)]
    [InlineData("shoot-length", "1 ft 6 in", "", NoteMeasure.Length, 0.4572)]
    [InlineData("nodes", "8", "", NoteMeasure.Count, 8)]
    [InlineData("node count", "8.4", "nodes", NoteMeasure.Count, 8.4)]
    [InlineData("budbreak", "50", "%", NoteMeasure.Share, 0.5)]
    [InlineData("percent bloom", "70", "", NoteMeasure.Share, 0.7)]
    [InlineData("veraison", "0", "", NoteMeasure.Share, 0)]
    [InlineData("veraison", "0.5", "percent", NoteMeasure.Share, 0.005)]
    [InlineData("leaf_size", "12 x 13", "cm", NoteMeasure.LeafArea, 142.119e-4)]
    [InlineData("leaf_size", "12 cm x 0.13 m", "", NoteMeasure.LeafArea, 142.119e-4)]
    [InlineData("leaf", "10", "cm", NoteMeasure.LeafArea, 100.075e-4)]
    [InlineData("clusters", "2", "", NoteMeasure.PerShoot, 2)]
    [InlineData("brix", "16.5", "°Brix", NoteMeasure.Sugar, 16.5)]
    [InlineData("irrigation", "0.5", "in", NoteMeasure.Depth, 12.7)]
    [InlineData("irrigation", "4", "gal/vine", NoteMeasure.LitersPerVine, 15.141647136)]
    [InlineData("irrigation", "20 liters per vine", "", NoteMeasure.LitersPerVine, 20)]
    [InlineData("shoot_thinning", "4", "shoots/ft", NoteMeasure.PerMeter, 13.123359580052494)]
    [InlineData("shoot_thinning", "24 per vine", "", NoteMeasure.PerVine, 24)]
    [InlineData("topping", "6", "ft", NoteMeasure.Length, 1.8288)]
    [InlineData("topping", "16", "nodes", NoteMeasure.Count, 16)]
    [InlineData("side_hedging", "20", "in", NoteMeasure.Length, 0.508)]
    [InlineData("cluster_thinning", "1", "per shoot", NoteMeasure.PerShoot, 1)]
    [InlineData("cluster_thinning", "30", "%", NoteMeasure.Share, 0.3)]
    [InlineData("tucking", "", "", NoteMeasure.Nothing, 0)]
    public void Reads_what_a_tape_a_count_and_a_glass_say(string what, string value, string unit, NoteMeasure measure, double expected)
    {
        var note = NotesText.One(what, value, unit);
        Assert.Equal(measure, note.Measure);
        Assert.Equal(expected, note.Value, 1e-9);
    }

    [Fact]
    public void Clusters_without_a_shoot_are_a_vines() =>
        Assert.Equal((NoteMeasure.PerVine, 34), (NotesText.One("clusters", "34", "", shoot: "").Measure, NotesText.One("clusters", "34", "", shoot: "").Value));

    [Theory]
    [InlineData("tendrils above tip", TipState.GrowingFreely)]
    [InlineData("Tip below tendrils", TipState.GrowingFreely)]
    [InlineData("tip above tendrils", TipState.Slowing)]
    [InlineData("below", TipState.Slowing)]
    [InlineData("stopped", TipState.Stopped)]
    public void Reads_the_sign_of_the_tip(string words, TipState state) => Assert.Equal(state, NotesText.One("tip", words).Tip);

    [Theory]
    [InlineData("upper_internodes", "even", UpperInternodes.Even)]
    [InlineData("Internodes", "not shorter", UpperInternodes.Even)]
    [InlineData("upper internodes", "Shortening", UpperInternodes.Shortening)]
    [InlineData("internode", "getting shorter", UpperInternodes.Shortening)]
    public void Reads_the_upper_internodes(string what, string words, UpperInternodes upper)
    {
        var note = NotesText.One(what, words);
        Assert.Equal((NoteKind.UpperInternodes, NoteMeasure.Nothing, upper), (note.Kind, note.Measure, note.Upper));
    }

    [Theory]
    [InlineData("60", "% morning", CanopySide.Morning)]
    [InlineData("60 %", "afternoon side", CanopySide.Afternoon)]
    [InlineData("60", "%", CanopySide.Both)]
    public void Reads_the_side_of_a_leaf_removal(string value, string unit, CanopySide side) =>
        Assert.Equal((side, 0.6), (NotesText.One("leaf_removal", value, unit).Side, NotesText.One("leaf_removal", value, unit).Value));

    [Theory]
    [InlineData("Sulphur, first cover", SprayKind.Sulfur)]
    [InlineData("mineral oil", SprayKind.Oil)]
    [InlineData("second cover, spoiled", SprayKind.Other)]
    public void Hears_sulfur_and_oil_in_a_sprays_name(string label, SprayKind kind)
    {
        var note = NotesText.One("spray", $"\"{label}\"");
        Assert.Equal((label, kind), (note.Label, note.Spray));
    }
}
