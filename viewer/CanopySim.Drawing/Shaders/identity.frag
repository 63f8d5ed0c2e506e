flat in int vBlade;
out int oBlade;
void main() { oBlade = vBlade; }
