using CanopySim.Files.Batch;
using Xunit;

namespace CanopySim.Files.Tests.Batch;

/// <summary>Tables come back from their bytes as they were; bytes that are not whole do not come back at all.</summary>
public sealed class ParquetTableTest
{
    private static readonly TableSchema Schema = new([new("item", true), new("dates.bloom", false), new("harvest.sugar_brix", true)]);

    [Fact]
    public void ATableComesBackToTheBit()
    {
        var table = Table();
        var read = ParquetTable.Read(ParquetTable.Bytes(table), Schema);
        Assert.Equal(table.Rows, read.Rows);
        for (var row = 0; row < table.Rows; row++) Assert.Equal(table.Row(row), read.Row(row));
    }

    [Fact]
    public void WhatIsNoNumberIsNull()
    {
        var table = new TableData(Schema);
        table.Add([1.0, null, double.NaN]);
        table.Add([2.0, "2014-06-01", double.PositiveInfinity]);
        Assert.Equal([null, null], table.Numbers(2));
    }

    [Fact]
    public void OneTableHasOneSequenceOfBytes() => Assert.Equal(ParquetTable.Bytes(Table()), ParquetTable.Bytes(Table()));

    [Fact]
    public void ATableWithoutRowsIsATable() =>
        Assert.Equal(0, ParquetTable.Read(ParquetTable.Bytes(new TableData(Schema)), Schema).Rows);

    [Fact]
    public void CutBytesAreRefused()
    {
        var bytes = ParquetTable.Bytes(Table());
        foreach (var length in new[] { 0, 4, bytes.Length / 2, bytes.Length - 1 })
            Assert.Throws<InvalidDataException>(() => ParquetTable.Read(bytes[..length], Schema));
    }

    [Fact]
    public void OtherColumnsAreRefused() => Assert.Throws<InvalidDataException>(() =>
        ParquetTable.Read(ParquetTable.Bytes(Table()), new TableSchema([new("item", true), new("dates.bloom", true), new("harvest.sugar_brix", true)])));

    [Fact]
    public void TwoColumnsOfOneNameAreRefused() =>
        Assert.Throws<ArgumentException>(() => new TableSchema([new("seed", true), new("Seed", true)]));

    private static TableData Table()
    {
        var table = new TableData(Schema);
        for (var row = 0; row < 100; row++)
            table.Add([(double)row, row % 3 == 0 ? null : $"2014-06-{1 + (row % 30):00}", row % 7 == 0 ? null : 1.0 / (row + 1)]);
        return table;
    }
}
